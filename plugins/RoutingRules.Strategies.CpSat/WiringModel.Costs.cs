using Google.OrTools.Sat;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <content>Silence, limits, cuts and costs.</content>
internal sealed partial class WiringModel
{
    private readonly SortedDictionary<int, BoolVar> sent = [];
    private readonly SortedDictionary<(int Block, int Receiver), BoolVar> bystanders = [];
    private readonly SortedDictionary<(int Receiver, int Block), BoolVar> received = [];

    /// <summary>Slots, blocks and sinks under demands that stay and that change.</summary>
    public Total Rewritten() => new Total().Add(rewrittenPoints.Values).Add(rewrittenBlocks.Values);

    /// <summary>Transmit blocks used, those of streams that stay included.</summary>
    public Total TransmitBlocks() => new Total().Add(sent.Values).Plus(part.TransmitBlocks.Count(block => block.IsHeard));

    /// <summary>Receive blocks used, those of streams that stay included.</summary>
    public Total ReceiveBlocks()
    {
        var total = new Total().Plus(part.ReceiveBlocks.Count(block => block.IsKept));
        foreach (var receiver in classes.Values.SelectMany(list => list))
        {
            if (!receiver.Block.IsKept && receiver.Block.CarrierFrom < 0)
            {
                total.Add(receiver.Takes.Select(take => take.Variable));
            }
        }

        return total;
    }

    private void AddSilence()
    {
        foreach (var receiver in classes.Values.SelectMany(list => list))
        {
            for (var position = 0; position < receiver.Block.Width && !receiver.Block.IsKept; position++)
            {
                if (receiver.Block.CarrierFrom < 0 && part.IsExposed(receiver.Block.First + position))
                {
                    KeepPrivate(receiver, position);
                }

                foreach (var output in part.OutputsFedBy(receiver.Block.First + position))
                {
                    if (part.MustBeSilent(output))
                    {
                        AddSilence(receiver, position, output);
                    }
                }
            }
        }
    }

    /// <summary>Nothing private arrives at a slot that leads to loudspeakers, unless a sender forces it there.</summary>
    private void KeepPrivate(ReceiveClass receiver, int position)
    {
        foreach (var take in receiver.Takes)
        {
            foreach (var (source, carried) in Carried(take.Start + position))
            {
                if (part.IsPrivate(new PointIndex(source)))
                {
                    new Total().Add(take.Variable).Add(carried).AtMost(model, 1);
                }
            }
        }
    }

    /// <summary>What a slot may carry that could have been left out, each with its variable.</summary>
    private List<(int Source, BoolVar Variable)> Carried(int slot)
    {
        var settled = part.ContentOf(new PointIndex(slot));
        return !settled.IsSettled ? contents.GetValueOrDefault(slot, [])
            : settled.Content.IsNone || settled.IsForced ? []
            : [(settled.Content.Value, always)];
    }

    private void AddSilence(ReceiveClass receiver, int position, PointIndex output)
    {
        var together = part.RoutedTogether(output);
        BoolVar? isRouted = null;
        if (together.Count > 0)
        {
            isRouted = model.NewBoolVar("");
            foreach (var sink in together)
            {
                foreach (var (_, chosen) in placedAt.GetValueOrDefault(sink.Value, []))
                {
                    model.AddImplication(chosen, isRouted);
                }
            }
        }

        foreach (var take in receiver.Takes)
        {
            foreach (var (source, carried) in Carried(take.Start + position))
            {
                if (part.ToleratedAt(output).Value == source)
                {
                    continue;
                }

                var loud = new Total().Add(take.Variable).Add(carried);
                foreach (var (placed, chosen) in placedAt.GetValueOrDefault(output.Value, []))
                {
                    loud.Add(chosen, placed == source ? -1 : 0);
                }

                loud.Add(isRouted ?? always).AtMost(model, 2);
            }
        }
    }

    private void AddTransmitBlocks()
    {
        var takesOf = new SortedDictionary<int, List<(ReceiveClass Receiver, Take Take)>>();
        foreach (var receiver in classes.Values.SelectMany(list => list))
        {
            foreach (var take in receiver.Takes)
            {
                if (!receiver.Block.IsKept && receiver.Block.CarrierFrom < 0)
                {
                    (takesOf.TryGetValue(take.Block, out var list) ? list : takesOf[take.Block] = []).Add((receiver, take));
                }
            }
        }

        foreach (var (id, takes) in takesOf)
        {
            var block = part.TransmitBlocks[id];
            if (!block.IsHeard)
            {
                sent.Add(id, model.NewBoolVar(""));
                takes.ForEach(entry => model.AddImplication(entry.Take.Variable, sent[id]));
            }

            var networks = new SortedDictionary<int, BoolVar>();
            foreach (var (receiver, take) in takes)
            {
                var network = part.NetworkBetween(block.Device, receiver.Block.Device);
                model.AddImplication(take.Variable, networks.TryGetValue(network, out var one) ? one : networks[network] = model.NewBoolVar(""));
                var key = (receiver.Block.Device, id);
                model.AddImplication(take.Variable, received.TryGetValue(key, out var stream) ? stream : received[key] = model.NewBoolVar(""));
            }

            model.AddAtMostOne(networks.Values);
        }

        AddOrderOfEqualBlocks(takesOf);
    }

    /// <summary>Transmit blocks that are alike are numbered by the first receiver that takes them: each is taken only once the one before it is.</summary>
    private void AddOrderOfEqualBlocks(SortedDictionary<int, List<(ReceiveClass Receiver, Take Take)>> takesOf)
    {
        var hasStaying = part.Demands.Any(demand => demand.Candidates.Any(candidate => candidate.IsExisting));
        var previous = new Dictionary<int, Dictionary<ReceiveClass, BoolVar>>();
        foreach (var id in sent.Keys)
        {
            var block = part.TransmitBlocks[id];
            var isPlain = block is { IsKept: false, CarrierTo: < 0, Bystanders.Count: 0 };
            for (var slot = block.First; slot < block.First + block.Width; slot = slot.Add(1))
            {
                isPlain &=
                    part.Show.Graph.FixedSource(slot) is null
                    && !(hasStaying && part.Show.Graph.Upstream(slot).Value >= 0)
                    && contents
                        .GetValueOrDefault(slot.Value, [])
                        .TrueForAll(entry =>
                            part.Filling(slot, new PointIndex(entry.Source)).Count == 1 && part.Filling(block.First, new PointIndex(entry.Source)).Count == 1
                        );
            }

            if (!isPlain)
            {
                continue;
            }

            var group = part.PortGroupOf(block.First);
            previous[group] = AddPrecedence(takesOf[id].ToLookup(entry => entry.Receiver, entry => entry.Take), previous.GetValueOrDefault(group));
        }
    }

    /// <summary>Lets receivers take a block only when an earlier one, or they themselves, take the block before it.</summary>
    /// <returns>For each receiver whether it or one before it takes the block.</returns>
    private Dictionary<ReceiveClass, BoolVar> AddPrecedence(ILookup<ReceiveClass, Take> takes, Dictionary<ReceiveClass, BoolVar>? before)
    {
        var taken = new Dictionary<ReceiveClass, BoolVar>();
        BoolVar? earlier = null;
        BoolVar? earlierBefore = null;
        foreach (var receiver in classes.Values.SelectMany(list => list))
        {
            var sofar = model.NewBoolVar("");
            var any = new Total().Add(sofar).Add(takes[receiver].Select(take => take.Variable), -1);
            (earlier is null ? any : any.Add(earlier, -1)).AtMost(model, 0);
            var needed = receiver.Count > 1 ? before?[receiver] : earlierBefore;
            foreach (var take in before is null ? [] : takes[receiver])
            {
                new Total().Add(take.Variable).Add(needed is null ? [] : [needed], -1).AtMost(model, 0);
            }

            taken.Add(receiver, sofar);
            earlier = sofar;
            earlierBefore = before?[receiver];
        }

        return taken;
    }

    private void AddStreamLimits()
    {
        foreach (var group in sent.GroupBy(entry => part.TransmitBlocks[entry.Key].Device))
        {
            var kept = part.TransmitBlocks.Count(block => block.Device == group.Key && block.IsHeard);
            new Total().Add(group.Select(entry => entry.Value)).AtMost(model, Math.Max(0, (long)part.SentLimit(group.Key) - kept));
        }

        foreach (var group in received.GroupBy(entry => entry.Key.Receiver))
        {
            var kept = part
                .ReceiveBlocks.Where(block => block.Device == group.Key && block.IsKept && !block.InputStart.IsNone)
                .Select(block => part.TransmitBlockOf(block.InputStart))
                .Distinct()
                .ToArray();
            new Total()
                .Add(group.Where(entry => !kept.Contains(entry.Key.Block)).Select(entry => entry.Value))
                .AtMost(model, Math.Max(0, (long)part.ReceivedLimit(group.Key) - kept.Length));
        }
    }

    /// <summary>Every source that a device wants takes a slot of what it receives, and a slot of what the sender sends.</summary>
    private void AddCuts()
    {
        var sending = new SortedDictionary<int, SortedDictionary<int, List<BoolVar>>>();
        foreach (var ((receiver, sender), bySource) in wanted.OrderBy(entry => entry.Key))
        {
            var slots = new Total();
            foreach (var from in classes.GetValueOrDefault(receiver, []))
            {
                foreach (var take in from.Takes)
                {
                    slots.Add(take.Variable, part.TransmitBlocks[take.Block].Device == sender ? from.Block.Width : 0);
                }
            }

            foreach (var (source, variables) in bySource)
            {
                var isWanted = model.NewBoolVar("");
                foreach (var variable in variables)
                {
                    model.Add(variable <= isWanted);
                }

                slots.Add(isWanted, -1);
                var sources = sending.TryGetValue(sender, out var known) ? known : sending[sender] = [];
                (sources.TryGetValue(source, out var list) ? list : sources[source] = []).Add(isWanted);
            }

            slots.AtLeast(model, 0);
        }

        foreach (var (sender, sources) in sending)
        {
            var slots = new Total();
            for (var id = 0; id < part.TransmitBlocks.Count; id++)
            {
                var block = part.TransmitBlocks[id];
                if (block.Device == sender && sent.TryGetValue(id, out var isSent))
                {
                    slots.Add(isSent, block.Width);
                }
                else if (block.Device == sender)
                {
                    slots.Plus(block.Width);
                }
            }

            foreach (var list in sources.Values)
            {
                var isWanted = model.NewBoolVar("");
                list.ForEach(variable => model.AddImplication(variable, isWanted));
                slots.Add(isWanted, -1);
            }

            slots.AtLeast(model, 0);
        }
    }

    private void AddBystanders()
    {
        foreach (var (id, isSent) in sent)
        {
            var block = part.TransmitBlocks[id];
            var staying = block.Bystanders.Where(other => !part.ReceiveBlocks[other].InputStart.IsNone).ToList();
            if (block.IsKept || staying.Count == 0)
            {
                continue;
            }

            for (var slot = block.First.Value; slot < block.First.Value + block.Width; slot++)
            {
                foreach (var (_, carried) in contents.GetValueOrDefault(slot, []))
                {
                    // A slot carries nothing that nobody takes, or a useless source could send bystanders away.
                    new Total()
                        .Add(carried)
                        .Add(uses.Where(use => ReferenceEquals(Carries(use.Slot, use.Source), carried)).Select(use => use.Used), -1)
                        .AtMost(model, 0);
                }
            }

            foreach (var other in staying)
            {
                // It stays in a block that is sent unless one of its slots gets another source than it had.
                var stays = model.NewBoolVar("");
                var change = new Total().Add(stays).Add(isSent, -1);
                var first = part.ReceiveBlocks[other].InputStart.Value;
                for (var slot = first; slot < first + part.ReceiveBlocks[other].Width; slot++)
                {
                    var before = part.Show.Graph.Upstream(new PointIndex(slot)).Value;
                    change.Add(contents.GetValueOrDefault(slot, []).Where(entry => entry.Source != before).Select(entry => entry.Variable));
                }

                change.AtLeast(model, 0);
                bystanders.Add((id, other), stays);
            }
        }
    }

    private bool HasLinkSeparation(int demand) => part.Demands[demand].Separations.Any(separation => separation.By == SeparationBy.Link);

    private BoolVar StreamUsed(int demand, int block)
    {
        if (!streamsUsed.TryGetValue((demand, block), out var variable))
        {
            streamsUsed.Add((demand, block), variable = model.NewBoolVar(""));
        }

        return variable;
    }

    private void AddLinkSeparations()
    {
        var links = new Dictionary<(int Demand, int Link), BoolVar>();
        foreach (var ((demand, block), used) in streamsUsed.OrderBy(entry => entry.Key))
        {
            foreach (var receiver in classes.Values.SelectMany(list => list))
            {
                foreach (var take in receiver.Takes.Where(take => take.Block == block && !receiver.Block.IsKept))
                {
                    foreach (var link in part.LinksBetween(part.TransmitBlocks[block].Device, receiver.Block.Device))
                    {
                        new Total().Add(used).Add(take.Variable).Add(LinkUsed(demand, link), -1).AtMost(model, 1);
                    }
                }
            }

            foreach (
                var staying in part.ReceiveBlocks.Where(receiver =>
                    receiver.IsKept && !receiver.InputStart.IsNone && part.TransmitBlockOf(receiver.InputStart) == block
                )
            )
            {
                foreach (var link in part.LinksBetween(part.TransmitBlocks[block].Device, staying.Device))
                {
                    model.AddImplication(used, LinkUsed(demand, link));
                }
            }

            foreach (var ((_, other), stays) in bystanders.Where(entry => entry.Key.Block == block))
            {
                foreach (var link in part.LinksBetween(part.TransmitBlocks[block].Device, part.ReceiveBlocks[other].Device))
                {
                    new Total().Add(used).Add(stays).Add(LinkUsed(demand, link), -1).AtMost(model, 1);
                }
            }
        }

        foreach (var ((demand, link), used) in links.OrderBy(entry => entry.Key).ToArray())
        {
            foreach (var separation in part.Demands[demand].Separations.Where(separation => separation.By == SeparationBy.Link && separation.Other > demand))
            {
                model.AddAtMostOne([used, LinkUsed(separation.Other, link)]);
            }
        }

        BoolVar LinkUsed(int demand, int link)
        {
            if (!links.TryGetValue((demand, link), out var variable))
            {
                links.Add((demand, link), variable = model.NewBoolVar(""));
            }

            return variable;
        }
    }
}
