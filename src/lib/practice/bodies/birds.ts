import { chanceOf } from '../chance.ts';

/** Names for generated bodies: birds, none of which is the name of a demo body. Nobody was measured for any of them. */
const BIRDS = [
	...[
		'Avocet',
		'Bittern',
		'Blackbird',
		'Brambling',
		'Bullfinch',
		'Bunting',
		'Bustard',
		'Buzzard',
		'Chaffinch'
	],
	...['Chiffchaff', 'Chough', 'Coot', 'Cormorant', 'Corncrake', 'Crane', 'Crossbill', 'Cuckoo', 'Curlew'],
	...['Dabchick', 'Dipper', 'Diver', 'Dotterel', 'Dove', 'Dunlin', 'Dunnock', 'Egret', 'Falcon', 'Fieldfare'],
	...[
		'Finch',
		'Firecrest',
		'Flycatcher',
		'Fulmar',
		'Gadwall',
		'Garganey',
		'Godwit',
		'Goldcrest',
		'Goldeneye'
	],
	...[
		'Goldfinch',
		'Goosander',
		'Goshawk',
		'Grebe',
		'Greenfinch',
		'Greenshank',
		'Grouse',
		'Guillemot',
		'Harrier'
	],
	...['Hawfinch', 'Hobby', 'Hoopoe', 'Jackdaw', 'Jay', 'Kestrel', 'Kingfisher', 'Kite', 'Kittiwake', 'Knot'],
	...['Lapwing', 'Linnet', 'Magpie', 'Mallard', 'Martin', 'Merganser', 'Merlin', 'Moorhen', 'Nightingale'],
	...['Nightjar', 'Nuthatch', 'Oriole', 'Osprey', 'Ousel', 'Owl', 'Oystercatcher', 'Partridge', 'Petrel'],
	...[
		'Phalarope',
		'Pintail',
		'Pipit',
		'Pochard',
		'Ptarmigan',
		'Puffin',
		'Quail',
		'Rail',
		'Raven',
		'Razorbill'
	],
	...[
		'Redpoll',
		'Redshank',
		'Redstart',
		'Redwing',
		'Robin',
		'Rook',
		'Ruff',
		'Sanderling',
		'Sandpiper',
		'Serin'
	],
	...['Shag', 'Shearwater', 'Shelduck', 'Shoveler', 'Shrike', 'Scoter', 'Skua', 'Skylark', 'Smew', 'Snipe'],
	...['Sparrow', 'Spoonbill', 'Starling', 'Stilt', 'Stonechat', 'Stork', 'Swallow', 'Swan', 'Swift', 'Teal'],
	...['Tern', 'Thrush', 'Treecreeper', 'Turnstone', 'Twite', 'Wagtail', 'Warbler', 'Waxwing', 'Wheatear'],
	...['Whimbrel', 'Whinchat', 'Whitethroat', 'Wigeon', 'Woodcock', 'Woodpecker', 'Wryneck', 'Yellowhammer']
] as const;

/** The name of the body of this seed. */
export const birdOf = (seed: number): string => {
	const place = Math.floor(chanceOf(seed, 'bird').fraction() * BIRDS.length);
	return BIRDS[place] ?? BIRDS[0];
};
