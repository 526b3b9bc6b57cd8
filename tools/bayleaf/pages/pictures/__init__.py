"""Pictures drawn as SVG."""
