"""Fields, tables and forms into which people type, whatever the page."""
