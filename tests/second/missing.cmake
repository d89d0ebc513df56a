message("not run: CVODE (libsundials-dev) is missing")
message(FATAL_ERROR "second: 0 passed, 1 failed")
