"""The sorts of value that planned jobs and the user's own figures keep in a store."""

from changeover.seed.manual import ManualValue
from changeover.store.look_up_tables import JobRow, ManualRow, TimeRow
from changeover.store.shelf_of_values import Sort
from changeover.store.values import PlannedJob
from changeover.switch.tasks import StandardTime

JOB = Sort(PlannedJob, JobRow, "job", ("name",))
TIME = Sort(StandardTime, TimeRow, "standard time", ("task",))
MANUAL = Sort(ManualValue, ManualRow, "manual value", ("crop", "setting", "planter", "part"))
