// Loaded into the web server before it starts: when the process that started it is gone, even by kill -9, it ends too. Next.js in
// development passes this file on to a worker, which Next.js itself looks after: only our own child is on the leash.
if (process.channel && process.env.TOELINE_LEASHED_BY === String(process.ppid)) {
  process.once('disconnect', () => {
    process.kill(process.pid, 'SIGTERM')
    setTimeout(() => process.exit(1), 5000).unref()
  })
  process.channel.unref()
}
