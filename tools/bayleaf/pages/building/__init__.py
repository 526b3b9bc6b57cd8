"""How a page is built: text, links, headings, tables and the frame of every page."""
