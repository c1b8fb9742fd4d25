"""The sorts of proof in the order of their pills; each view is imported when first shown."""

from changeover.window.pages import PageLine

PROOFS: tuple[PageLine, ...] = (
    PageLine("bench", "bench", "changeover.window.proof_bench", "BenchView"),
    PageLine("spacing", "spacing", "changeover.window.proof_spacing", "SpacingView"),
    PageLine("depth", "depth", "changeover.window.proof_depth", "DepthView"),
    PageLine("drive", "drive", "changeover.window.proof_drive", "DriveView"),
    PageLine("vacuum", "vacuum", "changeover.window.vacuum_view", "VacuumProof"),
    PageLine("wear", "wear", "changeover.window.wear_view", "WearProof"),
    PageLine("taken", "taken", "changeover.window.proof_taken", "TakenView"),
)
