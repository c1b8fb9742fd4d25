"""The window: pages, models, delegates and drawings; no rule of the trade lives here.

To add a page: write ``changeover/window/<name>_page.py`` with a subclass of
:class:`changeover.window.page.Page` that sets ``wants`` (the kinds of data it shows) and
implements ``refresh(changed)``; then add one line for it to ``PAGES`` in
``changeover/window/pages.py``. The rail, the shortcut Ctrl+1 … Ctrl+0, the lazy import and the
pictures of ``changeover shots`` follow from that line. ``stops()`` names the places that F6 goes
round; ``more_to_see()`` shows dialogs and further views for the pictures.

A page receives four things and keeps them: ``read`` (calls a function of ``changeover.desk`` with
the store: ``self.read(work_view, self.outlook.planter, self.outlook.units)``), ``door``
(``self.door.push(edit)`` is the only way to change data), ``outlook`` (planter, board, units,
colour tokens) and ``asking`` (confirm, choose a file, tell). The main window calls ``refresh``
when something the page wants has changed, when another planter or other units are chosen, and
only while the page is shown; a hidden page is refreshed when it is next shown. Colours and fonts
come from ``changeover.window.theme`` and the object names of ``resources/style/window.qss``;
own paint uses ``self.outlook.tokens`` and ``changeover.window.marks``.
"""
