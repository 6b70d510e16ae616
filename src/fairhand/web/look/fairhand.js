// The little that a page cannot do without a script: to notice that a file was changed outside.
