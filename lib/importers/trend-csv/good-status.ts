import { FieldNames } from "./field-names";
import { withoutQuotes } from "./plain-field";
import { statusMeaning } from "./status-words";

/** Tells of status fields whether they say that all is well, each text looked at once. */
export class GoodStatus {
  private readonly fields: FieldNames;
  private readonly isGood: boolean[] = [];

  constructor(bytes: Buffer) {
    this.fields = new FieldNames(bytes);
  }

  says(from: number, to: number): boolean {
    const id = this.fields.idOf(from, to);
    this.isGood[id] ??= statusMeaning(withoutQuotes(this.fields.texts[id] as string)) === "good";
    return this.isGood[id] as boolean;
  }
}
