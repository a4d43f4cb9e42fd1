/** The system's word for what went wrong, such as `ENOENT`. */
export function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "unknown";
}

/** What stopped a write, in words where we have any. */
export function writeErrorSaid(code: string): string {
  switch (code) {
    case "ENOSPC":
    case "EDQUOT":
      return `no room left on the disk (${code})`;
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return `no permission to write it (${code})`;
    case "ENAMETOOLONG":
      return "a name that is too long";
    default:
      return `the error ${code}`;
  }
}
