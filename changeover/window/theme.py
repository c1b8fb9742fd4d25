"""Colour tokens of the light and the dark window, type sizes, and the style sheet made of them."""

from dataclasses import asdict, dataclass
from functools import lru_cache

from PySide6.QtGui import QColor, QFont, QPalette

from changeover.bundled import bundled

TEXT_PX, TITLE_PX, PAGE_TITLE_PX, SMALL_PX = 13, 15, 20, 11


@dataclass(frozen=True)
class Tokens:
    """The colours of one look, as ``#rrggbb``; each is named after its use."""

    name: str
    ground: str
    surface: str
    rail: str
    band: str
    ink: str
    soft: str
    hair: str
    accent: str
    accent_wash: str
    on_accent: str
    work: str
    work_wash: str
    done: str

    def colour(self, token: str, alpha: int = 255) -> QColor:
        """Return a token as a colour to paint with, not to be altered."""
        return _colour(getattr(self, token), alpha)


@lru_cache(maxsize=128)
def _colour(text: str, alpha: int) -> QColor:
    made = QColor(text)
    made.setAlpha(alpha)
    return made


LIGHT = Tokens(
    name="light",
    ground="#F5F3EE",
    surface="#FFFFFF",
    rail="#EEEBE3",
    band="#E8E4DA",
    ink="#20242C",
    soft="#626977",
    hair="#DDD8CC",
    accent="#0B5A8A",
    accent_wash="#E3EEF5",
    on_accent="#FFFFFF",
    work="#A8500A",
    work_wash="#FBEEDD",
    done="#4F6B5A",
)
DARK = Tokens(
    name="dark",
    ground="#15171B",
    surface="#1D2026",
    rail="#22262D",
    band="#2B3038",
    ink="#E9E6E0",
    soft="#9BA2AF",
    hair="#343943",
    accent="#6FB6E0",
    accent_wash="#1D3442",
    on_accent="#10151A",
    work="#F0A35E",
    work_wash="#3A2A18",
    done="#8FB39C",
)


def font(pixels: int = TEXT_PX, *, bold: bool = False) -> QFont:
    """Return the interface font at a size, with tabular figures."""
    made = QFont()
    made.setPixelSize(pixels)
    made.setBold(bold)
    made.setFeature(QFont.Tag("tnum"), 1)
    return made


def style_sheet(tokens: Tokens) -> str:
    """Return the style sheet of the window with the tokens put in for their names."""
    text = bundled("resources", "style", "window.qss").read_text(encoding="utf-8")
    for drawing in ("chevron", "tick"):
        file = bundled("resources", "style", f"{drawing}-{tokens.name}.svg")
        text = text.replace(f"@{drawing}", file.as_posix())
    for name in sorted(asdict(tokens), key=len, reverse=True):
        text = text.replace(f"@{name}", getattr(tokens, name))
    return text


_ROLES = {
    QPalette.ColorRole.Window: "ground",
    QPalette.ColorRole.WindowText: "ink",
    QPalette.ColorRole.Base: "surface",
    QPalette.ColorRole.AlternateBase: "ground",
    QPalette.ColorRole.Text: "ink",
    QPalette.ColorRole.Button: "surface",
    QPalette.ColorRole.ButtonText: "ink",
    QPalette.ColorRole.Highlight: "accent",
    QPalette.ColorRole.HighlightedText: "on_accent",
    QPalette.ColorRole.ToolTipBase: "surface",
    QPalette.ColorRole.ToolTipText: "ink",
    QPalette.ColorRole.PlaceholderText: "soft",
    QPalette.ColorRole.Link: "accent",
}


def palette(tokens: Tokens) -> QPalette:
    """Return the palette for widgets that the style sheet does not name."""
    made = QPalette()
    for role, token in _ROLES.items():
        made.setColor(role, tokens.colour(token))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text):
        made.setColor(QPalette.ColorGroup.Disabled, role, tokens.colour("soft"))
    return made
