"""The pages, one file each; ``fairhand.web.routes`` puts their addresses in order."""
