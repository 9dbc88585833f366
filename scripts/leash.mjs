// Loaded into the web server before it starts: when the process that started it is gone, even by kill -9, it ends too.
if (process.channel) {
  process.once('disconnect', () => {
    process.kill(process.pid, 'SIGTERM')
    setTimeout(() => process.exit(1), 5000).unref()
  })
  process.channel.unref()
}
