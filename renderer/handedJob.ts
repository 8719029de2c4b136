import { request } from './api.ts'

/**
 * In the program's own window, asks on opening and on every return to it whether a job's file was pressed in a folder, and
 * gives it to `take`. Gives how to stop.
 */
export function watchHandedJobs(take: (file: File) => void): () => void {
  if (!window.bracework) return () => {}
  const look = async (): Promise<void> => {
    const reply = await request('job.handed', {})
    if (reply.ok && reply.value) take(new File([reply.value.text], reply.value.name))
  }
  const looks = () => void look()
  looks()
  window.addEventListener('focus', looks)
  return () => window.removeEventListener('focus', looks)
}
