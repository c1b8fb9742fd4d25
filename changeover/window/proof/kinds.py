"""The sorts of proof in the order of their pills; each view is imported when first shown."""

from changeover.window.pages import PageLine

PROOFS: tuple[PageLine, ...] = (
    PageLine("bench", "bench", "changeover.window.proof.bench", "BenchView"),
    PageLine("spacing", "spacing", "changeover.window.proof.spacing", "SpacingView"),
    PageLine("depth", "depth", "changeover.window.proof.depth", "DepthView"),
    PageLine("drive", "drive", "changeover.window.proof.drive", "DriveView"),
    PageLine("vacuum", "vacuum", "changeover.window.vacuum.view", "VacuumProof"),
    PageLine("wear", "wear", "changeover.window.wear.view", "WearProof"),
    PageLine("taken", "taken", "changeover.window.proof.taken", "TakenView"),
)
