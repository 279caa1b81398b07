package readback

import (
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// start brings up the one PDFium of a test binary. Compiled code is kept in
// the user's cache directory where there is one: it takes seconds to make.
var start = sync.OnceValues(func() (pdfium.Pdfium, error) {
	// The reader's setjmp needs exception handling.
	config := wazero.NewRuntimeConfig().WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling)
	if dir, err := os.UserCacheDir(); err == nil {
		if cache, err := wazero.NewCompilationCacheWithDir(filepath.Join(dir, "rodsheet-test")); err == nil {
			config = config.WithCompilationCache(cache)
		}
	}
	pool, err := webassembly.Init(webassembly.Config{
		MaxIdle: 1, MaxTotal: 1, RuntimeConfig: config, FSConfig: wazero.NewFSConfig(),
	})
	if err != nil {
		return nil, err
	}
	return pool.GetInstance(time.Minute)
})

// busy lets one test at a time at the reader.
var busy sync.Mutex
