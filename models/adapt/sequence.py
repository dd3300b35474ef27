"""How likely a text is among all that could have been said, from the outputs of the network: maximum mutual
information over sequences of phones, without lattices (Povey et al., Interspeech 2016).

Every phone has one state that it enters on one output and stays in on another; which outputs depends on the
phone before it. A text's ways weigh nothing, those of anything as a trigram of phones has them: the difference
tells how training goes, it is no probability of the text."""
import random
from collections import Counter

import torch

SILENCE = 1
NEVER = -1e30


class Spelling:
    """Pronunciations, and outputs of phones in context, as `tiptoe.graph.Spellings` writes them."""

    def __init__(self, folder, tuples):
        self.outputs = {}
        for line in open(f"{folder}/contexts.tsv", encoding="utf-8"):
            left, phone, number = map(int, line.split("\t"))
            self.outputs[left, phone] = tuples[number][1:]
        self.words = {}
        for line in open(f"{folder}/words.tsv", encoding="utf-8"):
            word, *ways = line.rstrip("\n").split("\t")
            self.words[word] = [list(map(int, way.split())) for way in ways]

    def knows(self, text):
        return all(word in self.words for word in text.replace(",", " ").split())

    def phones(self, text, chance):
        """One way to say a text, silences by chance."""
        found = [SILENCE] if chance.random() < 0.8 else []
        for word in text.replace(",", " , ").split():
            found += [SILENCE] if word == "," else chance.choice(self.words[word])
            if found[-1] != SILENCE and chance.random() < 0.08:
                found.append(SILENCE)
        return found

    def graph(self, text):
        """All ways to say a text: of each node its outputs and the nodes before it (-1 is the start), and which
        nodes may end it."""
        outputs, before = [], []

        def node(left, phone, earlier):
            outputs.append(self.outputs[left, phone])
            before.append(list(earlier))
            return len(outputs) - 1

        def with_silence(ends):
            pauses = [node(left, SILENCE, ends[left]) for left in list(ends)]
            ends.setdefault(SILENCE, []).extend(pauses)
            return ends

        ends = with_silence({0: [-1]})
        for word in text.replace(",", " ").split():
            after = {}
            for way in self.words[word]:
                here = [node(left, way[0], earlier) for left, earlier in ends.items()]
                for left, phone in zip(way, way[1:]):
                    here = [node(left, phone, here)]
                after.setdefault(way[-1], []).extend(here)
            ends = with_silence(after)
        return outputs, before, [each for nodes in ends.values() for each in nodes]


class Said:
    """The ways to say some texts, padded to one size."""

    def __init__(self, graphs, device):
        count, nodes = len(graphs), max(len(outputs) for outputs, _, _ in graphs)
        most = max(len(each) for _, before, _ in graphs for each in before)
        self.enter = torch.zeros(count, nodes, dtype=torch.long)
        self.stay = torch.zeros(count, nodes, dtype=torch.long)
        self.before = torch.full((count, nodes, most), nodes + 1, dtype=torch.long)
        self.last = torch.full((count, nodes), NEVER)
        for row, (outputs, before, last) in enumerate(graphs):
            self.enter[row, : len(outputs)] = torch.tensor([each[0] for each in outputs])
            self.stay[row, : len(outputs)] = torch.tensor([each[1] for each in outputs])
            for k, each in enumerate(before):
                self.before[row, k, : len(each)] = torch.tensor([nodes if p < 0 else p for p in each])
            self.last[row, last] = 0.0
        for name in ("enter", "stay", "before", "last"):
            setattr(self, name, getattr(self, name).to(device))

    def score(self, found):
        """Log-likelihood of each row's text; found: outputs, rows by frames by outputs."""
        count, nodes, most = self.before.shape
        enter = found.gather(2, self.enter[:, None].expand(-1, found.shape[1], -1))
        stay = found.gather(2, self.stay[:, None].expand(-1, found.shape[1], -1))
        never = found.new_full((count, 1), NEVER)
        start = found.new_zeros(count, 1)
        alpha = found.new_full((count, nodes), NEVER)
        where = self.before.flatten(1)
        for t in range(found.shape[1]):
            all_ = torch.cat([alpha, start if t == 0 else never, never], 1)
            come = all_.gather(1, where).unflatten(1, (nodes, most)).logsumexp(2)
            alpha = torch.logaddexp(come + enter[:, t], alpha + stay[:, t]).clamp(min=NEVER)
        return (alpha + self.last).logsumexp(1)


class Anything:
    """All that could have been said: a trigram of phones over texts, interpolated with its bigram."""

    TRIGRAM = 0.7  # its share; the rest is the bigram's

    def __init__(self, spelling, texts, device):
        chance = random.Random(1)
        pairs, triples = Counter(), Counter()
        for text in texts:
            for _ in range(2):
                phones = [0] + spelling.phones(text, chance)
                pairs.update(zip(phones, phones[1:]))
                triples.update(zip(phones, phones[1:], phones[2:]))
        phones = sorted({phone for _, phone in pairs} | {SILENCE})
        for phone in phones:
            for pair in ((phone, SILENCE), (SILENCE, phone), (0, phone)):
                if pair in spelling.outputs:
                    pairs[pair] += 1
        states = sorted(pairs)
        place = {pair: k for k, pair in enumerate(states)}
        total = Counter()
        for (left, _), count in pairs.items():
            total[left] += count
        following = {}
        for left, phone in states:
            following.setdefault(left, []).append(phone)
        of_pair = Counter()
        for (left, phone, _), count in triples.items():
            of_pair[left, phone] += count
        move = torch.zeros(len(states), len(states))
        for k, (left, phone) in enumerate(states):
            share = self.TRIGRAM if of_pair[left, phone] else 0.0
            for after in following.get(phone, []):
                likely = (1 - share) * pairs[phone, after] / total[phone]
                if share:
                    likely += share * triples[left, phone, after] / of_pair[left, phone]
                move[k, place[phone, after]] = likely
        first = torch.zeros(len(states))
        for (left, phone), k in place.items():
            if left == 0:
                first[k] = pairs[left, phone] / total[0]
        self.move, self.first = move.to(device), first.to(device)
        outputs = torch.tensor([spelling.outputs[pair] for pair in states]).to(device)
        self.enter, self.stay = outputs[:, 0], outputs[:, 1]

    def score(self, found):
        """Log-likelihood that anything was said, of each row."""
        top = found.amax(2, keepdim=True).detach()
        likely = (found - top).clamp(min=-60).exp()
        enter, stay = likely[:, :, self.enter], likely[:, :, self.stay]
        alpha = self.first * enter[:, 0]
        score = top.sum((1, 2))
        for t in range(found.shape[1]):
            if t:
                alpha = (alpha @ self.move) * enter[:, t] + alpha * stay[:, t]
            total = alpha.sum(1, keepdim=True)
            score = score + total.log()[:, 0]
            alpha = alpha / total
        return score
