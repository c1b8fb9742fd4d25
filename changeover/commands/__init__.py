"""The jobs that the command line does without a window, one module each."""
