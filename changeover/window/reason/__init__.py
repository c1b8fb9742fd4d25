"""The reason beside a cell: rule, inputs, source, and small drawings to scale."""
