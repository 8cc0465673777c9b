"""The same work as text, HTML, marked text for print, and JSON; no arithmetic."""
