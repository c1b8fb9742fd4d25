"""The font of the printed sheets, embedded so that every sign prints on every printer."""

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from typing import TYPE_CHECKING

from changeover.bundled import bundled
from changeover.quantities import how_many

if TYPE_CHECKING:
    from reportlab.pdfbase.ttfonts import TTFont

PLAIN, BOLD = "DejaVuSans", "DejaVuSans-Bold"
_NARROW = str.maketrans({"\u202f": "\u00a0", "\u2009": "\u00a0", "\t": " "})
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")


@cache
def _font(name: str) -> "TTFont":
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    font = TTFont(name, str(bundled("resources", "fonts", f"{name}.ttf")))
    pdfmetrics.registerFont(font)
    return font


def use_fonts() -> None:
    """Register both fonts with reportlab, once, bold under the family of the plain one."""
    from reportlab.pdfbase.pdfmetrics import registerFontFamily

    _font(PLAIN)
    _font(BOLD)
    registerFontFamily(PLAIN, normal=PLAIN, bold=BOLD, italic=PLAIN, boldItalic=BOLD)


def printable(text: str) -> str:
    """Return a text with every sign that the font lacks replaced by ``?``, never by a box."""
    known = _font(PLAIN).face.charToGlyph
    plain = _CONTROL.sub(" ", text.translate(_NARROW))
    return "".join(sign if sign == "\n" or ord(sign) in known else "?" for sign in plain)


def lost_signs(value: object) -> str:
    """Return the signs that the font lacks in a text, or in all texts of a sheet, each once."""
    known = _font(PLAIN).face.charToGlyph
    signs = dict.fromkeys("".join(_texts(value)).translate(_NARROW))
    return "".join(sign for sign in signs if sign >= " " and ord(sign) not in known)


def lost_note(value: object) -> str:
    """Say on a sheet that it lacks signs of its texts; empty when it has them all."""
    lost = len(lost_signs(value))
    if not lost:
        return ""
    return f"The font of this sheet lacks {how_many(lost, 'sign')} of its names; each stands as ?."


def lost_words(value: object) -> str:
    """Name beside a sheet the signs that it lacks; empty when it has them all."""
    lost = lost_signs(value)
    return f"The font of the printed sheets lacks {' '.join(lost)}; they show ?." if lost else ""


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for one in value:
            yield from _texts(one)
    elif is_dataclass(value):
        for field in fields(value):
            yield from _texts(getattr(value, field.name))


def marked_up(text: str) -> str:
    """Return a printable text with the signs of mark-up escaped, for a paragraph."""
    plain = printable(text)
    return plain.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
