/** The phone itself: whose hands, its light, its storage, its version, and the way out. */
import { CupChoice } from "../../parts/Choices.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { FieldGroup } from "../../parts/Fields.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { isStorageKept, takeUpdate, updateIsReady } from "../../state/app.ts";
import { current } from "../../state/session.ts";
import { light, setLight } from "../../state/settings.ts";
import { LIGHTS, OUTBOX } from "../../text/outbox.ts";

/** Storage, version and light hold for everybody on this phone. */
export function ThisPhone({ onSignOut }: { onSignOut: () => void }) {
  const who = current.value;
  return (
    <Part title={OUTBOX.phone}>
      {updateIsReady.value && (
        <Notice>
          {OUTBOX.update_waits} <Cup onPress={() => takeUpdate()}>{OUTBOX.update}</Cup>
        </Notice>
      )}
      <Facts
        rows={[
          { name: OUTBOX.person, value: <span class="rec">{who?.member.name ?? ""}</span> },
          {
            name: OUTBOX.cooperative,
            value: <span class="rec">{who?.cooperative.name ?? ""}</span>,
          },
          { name: OUTBOX.mark, value: who?.mark ?? "" },
          { name: OUTBOX.storage, value: storageWords() },
          { name: OUTBOX.version, value: __APP_VERSION__ },
        ]}
      />
      {isStorageKept.value === false && <p class="second">{OUTBOX.storage_hint}</p>}
      <FieldGroup label={OUTBOX.light}>
        <CupChoice
          name={OUTBOX.light}
          options={LIGHTS}
          chosen={light.value}
          onChoose={(chosen) => setLight(chosen)}
        />
      </FieldGroup>
      <div class="cup-choice">
        <Cup href="#/people">{OUTBOX.change_person}</Cup>
        <Cup onPress={onSignOut}>{OUTBOX.sign_out}</Cup>
      </div>
    </Part>
  );
}

function storageWords(): string {
  if (isStorageKept.value === null) return OUTBOX.storage_unknown;
  return isStorageKept.value ? OUTBOX.storage_kept : OUTBOX.storage_not_kept;
}
