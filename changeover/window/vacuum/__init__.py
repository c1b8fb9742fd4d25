"""Gauge readings along each fan's manifold, judged and drawn."""
