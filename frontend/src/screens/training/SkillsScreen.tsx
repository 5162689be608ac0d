/** The class for a coordinator; for everybody else their own sheet. */
import { current } from "../../state/session.ts";
import { ClassView } from "./ClassView.tsx";
import { ReaderView } from "./ReaderView.tsx";

/** `#/skills`. */
export function Screen() {
  const member = current.value?.member;
  const isTrainer = member?.roles.includes("coordinator") ?? false;
  return isTrainer ? <ClassView /> : <ReaderView member={member?.id ?? ""} />;
}
