"""The Qt program: window, canvas with its tools, panels and dialogs."""
