"""Qt's first import, leaving Python's own ``import`` in place.

PySide6 puts one of its own in place of it, which reads the source of every module imported later
to see whether that asks for Python-style method names. No module here does, and the reading
takes a tenth of the start of the program.
"""

import builtins

_import = builtins.__import__
try:
    import PySide6.QtCore  # noqa: F401  imported for the side effect that is undone
finally:
    builtins.__import__ = _import
