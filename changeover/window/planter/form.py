"""The form of one planter: rows, spacing, groups, drive, and the positions it offers."""

from types import MappingProxyType

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QFormLayout, QLineEdit, QScrollArea, QTabWidget, QWidget

from changeover.desk.edits import PutPlanter
from changeover.planter.drive import Drive
from changeover.planter.group_text import (
    read_groups,
    read_rows,
    show_groups,
    show_rows,
)
from changeover.planter.groups import Group
from changeover.planter.load_reading import LoadReading
from changeover.planter.load_text import read_loads, show_loads
from changeover.planter.machine import (
    DEFAULT_CLOSING,
    DEFAULT_SINGULATOR,
    Planter,
    check_row_count,
)
from changeover.planter.places import GROUP_SORTS, Scope
from changeover.planter.scales import DepthScale
from changeover.quantities import Q, Refusal
from changeover.window.door import Door
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.entry.kept_fields import KeptFields
from changeover.window.outlook import Outlook
from changeover.window.planter.drive_form import DriveLines
from changeover.window.planter.position_text import read_positions, show_positions
from changeover.window.planter.row_depths import RowDepths

GROUP_WORDS = {
    Scope.DRIVE: "Drives",
    Scope.FAN: "Fans",
    Scope.TANK: "Tanks",
    Scope.DOWN_PRESSURE: "Down pressure circuits",
    Scope.CONTROLLER: "Controllers",
}
TABS = ("Rows and groups", "Drive", "Depth", "Positions")
GROUP_HINT = "how many, or their rows: 1-12; 13-24"


class PlanterForm(FormDialog):
    """Adds a planter, or changes one; what is wrong stands below while it is typed."""

    wanted = "Name, rows and row spacing are needed; the rest can wait."

    def __init__(
        self, planter: Planter | None, door: Door, outlook: Outlook, parent: QWidget
    ) -> None:
        title = "A new planter" if planter is None else f"Planter {planter.name}"
        super().__init__(title, door, parent)
        self._before, self._kept = planter, KeptFields(outlook.units)
        self._units = outlook.units
        self.name, self.rows, self.spacing = QLineEdit(), QLineEdit(), QLineEdit()
        self.split, self.tracks = QLineEdit(), QLineEdit()
        self.twin = QCheckBox("every two neighbouring rows make a pair")
        self.capacity, self.loads = QLineEdit(), QLineEdit()
        self.groups = {sort: QLineEdit() for sort in GROUP_SORTS}
        self.first, self.step, self.notches = QLineEdit(), QLineEdit(), QLineEdit()
        self.singulator, self.closing = QLineEdit(), QLineEdit()
        self.row_depths = RowDepths(outlook)
        self.hub, self.limit, self.sensors = QLineEdit(), QLineEdit(), QLineEdit()
        self._drive_before: Drive | None = None
        self._loads_before: tuple[str, tuple[LoadReading, ...]] = ("", ())
        self.tabs = QTabWidget()
        self.tabs.setMinimumHeight(440)
        self.pages = {name: self._page(name) for name in TABS}
        self.drive = DriveLines(self.pages["Drive"], outlook.units)
        self._lay_out()
        self._fill(planter)
        for field in self.findChildren(QLineEdit):
            field.textChanged.connect(self.check)
        self.drive.kind.currentTextChanged.connect(self.check)
        self.twin.toggled.connect(self.check)
        self.row_depths.changed.connect(self.check)
        self.check()
        self.resize(640, 650)

    def edit(self) -> PutPlanter:
        return PutPlanter(self.planter(), before=self._before)

    def planter(self) -> Planter:
        """Return the planter as described. Raises Refusal."""
        rows = self._whole(self.rows, "Rows")
        groups = self._groups(rows)
        drive = self.drive.drive()
        names = [group.name for group in groups if group.sort is Scope.DRIVE]
        if drive is not None and not names:
            raise Refusal("A drive is entered, but no drive groups; enter how many drives turn.")
        return Planter(
            name=self.name.text().strip(),
            rows=rows,
            row_spacing=self._kept.read(self.spacing, "row_spacing", "Row spacing"),
            groups=groups,
            drives=MappingProxyType(self._drives(names, drive)),
            split_rows=frozenset(read_rows(self.split.text(), "Rows that lock up")),
            depth=self._depth(rows),
            singulator=read_positions(self.singulator.text(), "Singulator", shares=True),
            closing=read_positions(self.closing.text(), "Closing", shares=False),
            hub_spacing_step=self._kept.read(self.hub, "hub_spacing", "Hub spacing step"),
            fan_limit=self._kept.read_if_any(self.limit, "pressure", "Fan limit"),
            sensors_per_controller=self._whole(self.sensors, "Sensors a controller reads"),
            tank_capacity=self._kept.read_if_any(self.capacity, "volume", "Tank capacity"),
            wheel_track_rows=frozenset(read_rows(self.tracks.text(), "Rows in wheel tracks")),
            twin_rows=self.twin.isChecked(),
            load_readings=self._loads(groups),
        )

    def _groups(self, rows: int) -> tuple[Group, ...]:
        check_row_count(rows)
        return tuple(
            group
            for sort, field in self.groups.items()
            for group in self._groups_of(sort, field.text(), rows)
        )

    def _groups_of(self, sort: Scope, text: str, rows: int) -> tuple[Group, ...]:
        """Read one sort; untouched groups keep their names, touched ones those of their numbers."""
        before = self._before
        if before is not None and before.rows == rows:
            had = before.groups_of(sort)
            if text == show_groups(had, rows):
                return had
        return read_groups(sort, text, rows)

    def _fill(self, planter: Planter | None) -> None:
        depth = planter.depth if planter else DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13)
        singulator = planter.singulator if planter else DEFAULT_SINGULATOR
        closing = planter.closing if planter else DEFAULT_CLOSING
        self._kept.fill(self.first, depth.first, "depth")
        self._kept.fill(self.step, depth.step, "depth_step")
        self.notches.setText(str(depth.count))
        self.row_depths.show_scale(depth, planter.rows if planter else 0)
        self.singulator.setText(show_positions(singulator))
        self.closing.setText(show_positions(closing))
        step = planter.hub_spacing_step if planter else Q(0.1, "mm")
        self._kept.fill(self.hub, step, "hub_spacing")
        self.sensors.setText(str(planter.sensors_per_controller if planter else 24))
        if planter is None:
            self.groups[Scope.FAN].setText("1")
            self.groups[Scope.DRIVE].setText("1")
            return
        self.name.setText(planter.name)
        self.rows.setText(str(planter.rows))
        self._kept.fill(self.spacing, planter.row_spacing, "row_spacing")
        self.split.setText(show_rows(planter.split_rows))
        for sort, field in self.groups.items():
            field.setText(show_groups(planter.groups_of(sort), planter.rows))
        self.drive.show_drive(next(iter(planter.drives.values()), None))
        self._kept.fill(self.limit, planter.fan_limit, "pressure")
        self._kept.fill(self.capacity, planter.tank_capacity, "volume")
        self.tracks.setText(show_rows(planter.wheel_track_rows))
        self.twin.setChecked(planter.twin_rows)
        self._loads_before = (show_loads(planter.load_readings, self._units), planter.load_readings)
        self.loads.setText(self._loads_before[0])
        self._drive_before = self.drive.drive()

    def _drives(self, names: list[str], drive: Drive | None) -> dict[str, Drive]:
        """Every group with the drive of the form; untouched, each keeps the one it had."""
        had = self._before.drives if self._before is not None else {}
        if had and drive == self._drive_before:
            return {name: had[name] for name in names if name in had}
        return dict.fromkeys(names, drive) if drive is not None else {}

    def check(self) -> None:
        """Say what is wrong, and show the rows on the scale that is typed."""
        super().check()
        try:
            rows = self._whole(self.rows, "Rows")
            check_row_count(rows)
            self.row_depths.show_scale(self._depth(rows), rows)
        except Refusal:
            return  # the rows stay as they were until what is typed can be

    def _depth(self, rows: int) -> DepthScale:
        return self.row_depths.on_scale(
            self._kept.read(self.first, "depth", "Depth at notch 1"),
            self._kept.read(self.step, "depth_step", "Depth step"),
            self._whole(self.notches, "Notches"),
            rows,
        )

    def _loads(self, groups: tuple[Group, ...]) -> tuple[LoadReading, ...]:
        text, before = self._loads_before
        if self.loads.text() == text:
            return before
        circuits = [group.name for group in groups if group.sort is Scope.DOWN_PRESSURE]
        return read_loads(self.loads.text(), circuits, self._units)

    def _whole(self, field: QLineEdit, what: str) -> int:
        text = field.text().strip()
        if not text.isdigit():
            raise Refusal(f"{what}: “{text}” is not a whole number; write it like 24.")
        return int(text)

    def _page(self, name: str) -> QFormLayout:
        inside, area = QWidget(), QScrollArea()
        form = QFormLayout(inside)
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        form.setContentsMargins(12, 12, 12, 12)
        form.setVerticalSpacing(8)
        area.setWidget(inside)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.tabs.addTab(area, name)
        return form

    def _lay_out(self) -> None:
        self.form.addRow("Name", self.name)
        rows = self.pages["Rows and groups"]
        positions, depth = self.pages["Positions"], self.pages["Depth"]
        lines: list[tuple[QFormLayout, str, QLineEdit, str]] = [
            (rows, "Rows", self.rows, "how many row units, from the left seen from behind"),
            (rows, "Row spacing", self.spacing, "of the main rows, such as 30 in"),
            (rows, "Rows that lock up", self.split, "on a split-row planter, such as 2, 4, 6"),
            *((rows, GROUP_WORDS[sort], field, GROUP_HINT) for sort, field in self.groups.items()),
            (rows, "Sensors a controller reads", self.sensors, "24 is common practice"),
            (rows, "Fan limit", self.limit, "most vacuum the fans reach, empty when not known"),
            (rows, "Tank capacity", self.capacity, "of each tank or row hopper, such as 50 bu"),
            (rows, "Rows in wheel tracks", self.tracks, "that run behind a tire, such as 5, 8"),
            (depth, "Depth at notch 1", self.first, ""),
            (depth, "Depth step", self.step, "a quarter inch is common practice"),
            (depth, "Notches", self.notches, ""),
            (
                positions,
                "Singulator",
                self.singulator,
                "names, each with the share left open",
            ),
            (positions, "Closing", self.closing, "names from lightest to strongest"),
            (positions, "Hub spacing step", self.hub, ""),
            (
                positions,
                "Gauge-wheel load",
                self.loads,
                "row 5: 100 lbf = 70 lbf, 200 lbf = 150 lbf",
            ),
        ]
        for form, words, field, hint in lines:
            form.addRow(words, field)
            field.setPlaceholderText(hint)
        rows.addRow("Twin rows", self.twin)
        depth.addRow(self.row_depths)
        self.form.addRow(self.tabs)
