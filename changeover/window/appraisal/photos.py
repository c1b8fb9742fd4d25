"""Photos of an appraisal: taken from files, made smaller, shown as thumbnails."""

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QIcon, QImage, QImageReader, QPixmap
from PySide6.QtWidgets import QListView, QListWidget, QListWidgetItem

from changeover.desk.appraise import PhotoNote
from changeover.quantities import Refusal

MOST_PIXELS, QUALITY = 2000, 85
THUMB = QSize(96, 72)
MOST_FILE = 60_000_000
KINDS = "Photos (*.jpg *.jpeg *.png)"
ROLE = Qt.ItemDataRole.UserRole


def read_photo(path: Path) -> bytes:
    """Return a photo upright, at most 2000 pixels on its longer side, as JPEG or PNG.

    Raises Refusal when the file is neither, too large, or cannot be read.
    """
    if not path.is_file() or path.stat().st_size > MOST_FILE:
        raise Refusal(f"{path.name} cannot be attached: it is missing or larger than 60 MB.")
    reader = QImageReader(str(path))
    reader.setDecideFormatFromContent(True)
    kind = bytes(reader.format().data()).decode()
    if kind not in ("jpeg", "png"):
        raise Refusal(f"{path.name} is neither JPEG nor PNG; save it as one of them.")
    size = reader.size()
    if max(size.width(), size.height()) > MOST_PIXELS:
        reader.setScaledSize(
            size.scaled(MOST_PIXELS, MOST_PIXELS, Qt.AspectRatioMode.KeepAspectRatio)
        )
    reader.setAutoTransform(True)
    image = reader.read()
    if image.isNull():
        raise Refusal(f"{path.name} cannot be read ({reader.errorString()}); choose another.")
    return _written(image, "PNG" if kind == "png" and image.hasAlphaChannel() else "JPEG")


def _written(image: QImage, kind: str) -> bytes:
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, kind, QUALITY)  # type: ignore[call-overload]
    return bytes(content.data())


class PhotoList(QListWidget):
    """Thumbnails with their words; the content of each is read once."""

    def __init__(self, content: Callable[[str], bytes]) -> None:
        super().__init__()
        self._content = content
        self._icons: dict[str, QIcon] = {}
        self.setAccessibleName("Photos")
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setMovement(QListView.Movement.Static)
        self.setIconSize(THUMB)
        self.setGridSize(QSize(THUMB.width() + 14, THUMB.height() + 26))
        self.setUniformItemSizes(True)

    def show_photos(self, notes: Sequence[PhotoNote]) -> None:
        """Show other photos; the one that was chosen stays chosen."""
        chosen = self.chosen
        self.clear()
        for note in notes:
            item = QListWidgetItem(self._icon(note.digest), note.caption)
            item.setData(ROLE, note.digest)
            item.setToolTip(f"{note.caption} ({note.size / 1000:.0f} kB)")
            self.addItem(item)
            if note.digest == chosen:
                self.setCurrentItem(item)

    @property
    def chosen(self) -> str | None:
        """The digest of the chosen photo, None when none is."""
        row = self.currentRow()
        return str(self.item(row).data(ROLE)) if row >= 0 else None

    def _icon(self, digest: str) -> QIcon:
        if digest not in self._icons:
            image = QImage.fromData(self._content(digest))
            ratio, smooth = Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode
            small = image.scaled(THUMB * 2, ratio, smooth.SmoothTransformation)
            self._icons[digest] = QIcon(QPixmap.fromImage(small))
        return self._icons[digest]
