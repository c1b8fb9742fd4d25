"""What the next crop needs: rate, need of seed, disc, vacuum, depth and the other settings, with reasons."""
