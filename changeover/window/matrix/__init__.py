"""The matrix of rows and settings: what it shows, how it is drawn, typed into and pasted into."""
