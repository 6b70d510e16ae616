"""The engines that set type and change formats: pandoc as a process of its own, typst in ours."""
