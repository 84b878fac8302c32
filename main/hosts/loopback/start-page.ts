/** The page behind the start address: it has set the cookie and goes on by a script of ours, since the policy allows no other. */
export const startPage = `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Hangwright</title></head>
<body><p><a href="/">Open Hangwright</a></p><script src="/start.js"></script></body></html>
`
export const startScript = `location.replace('/')\n`
