/** A process that opens a store, and says at which step its schema stands: `tsx tests/server/open-here.ts PLACE`, a place as JSON. */
import type { StorePlace } from '#server/settings.ts';
import { versionOf } from '#server/store/migrate.ts';
import { openStore } from '#server/store/store.ts';

const store = await openStore(JSON.parse(process.argv[2] ?? '') as StorePlace);
console.log(await versionOf(store.db));
await store.close();
