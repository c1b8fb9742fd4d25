"""What the next crop needs: rate, need, disc, vacuum, depth and the rest, each with its reason."""
