/** One reader: what the drills of a member say. */
import { ReaderView } from "./ReaderView.tsx";

/** `#/skills/:member`; another member's sheet is on a coordinator's phone only. */
export function Screen({ params }: { params: Record<string, string> }) {
  return <ReaderView member={params.member ?? ""} />;
}
