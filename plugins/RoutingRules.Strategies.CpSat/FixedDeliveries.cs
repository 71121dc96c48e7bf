using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <summary>What chosen candidates ask of the wiring at sinks that always take their receive slot.</summary>
internal sealed class FixedDeliveries(AssignmentPart part, PlacementModel placements, WiringVariables wiring)
{
    private readonly CpModel model = placements.Model;

    /// <summary>A transmit slot that a line names carries the line, in whatever block is sent.</summary>
    public void AddSlotSinks()
    {
        for (var demand = 0; demand < part.Demands.Count; demand++)
        {
            for (var index = 0; index < part.Demands[demand].Candidates.Count; index++)
            {
                foreach (
                    var delivery in part.Demands[demand]
                        .Candidates[index]
                        .Deliveries.Where(delivery => delivery.IsLocal && part.TransmitBlockOf(delivery.Sink) >= 0)
                )
                {
                    for (var position = 0; position < delivery.Width; position++)
                    {
                        var chosen = placements.Chosen[demand][index];
                        if (wiring.Carries(delivery.Sink.Value + position, delivery.Source.Value + position) is { } filled)
                        {
                            model.AddImplication(chosen, filled);
                        }
                        else
                        {
                            model.AddBoolAnd([chosen.Not()]);
                        }
                    }
                }
            }
        }
    }

    /// <summary>Counts sinks of demands that stay and that take their signal from another point, where that needs no choice of the wiring.</summary>
    public void CountSettled()
    {
        for (var demand = 0; demand < part.Demands.Count; demand++)
        {
            for (var index = 0; index < part.Demands[demand].Candidates.Count; index++)
            {
                var candidate = part.Demands[demand].Candidates[index];
                foreach (var delivery in candidate.IsExisting ? candidate.Deliveries : [])
                {
                    for (var position = 0; position < delivery.Width; position++)
                    {
                        var sink = delivery.Sink + position;
                        var feeder = delivery.IsLocal ? delivery.Source + position : part.ReceiveSlotOf(sink);
                        if (!feeder.IsNone && feeder != sink && part.Show.Graph.Upstream(sink) != feeder)
                        {
                            model.AddImplication(placements.Chosen[demand][index], wiring.Rewritten(sink.Value));
                        }
                    }
                }
            }
        }
    }

    public void AddFixedDeliveries()
    {
        var bySink = new SortedDictionary<(int Sink, int Source, int Sender), List<BoolVar>>();
        foreach (var (demand, candidate, chosen, delivery) in wiring.Deliveries())
        {
            if (part.ReceiveSlotOf(delivery.Sink).IsNone)
            {
                for (var position = 0; position < delivery.Width; position++)
                {
                    wiring.Place(delivery.Sink.Value + position, delivery.Source.Value + position, chosen);
                }

                continue;
            }

            for (var position = 0; position < delivery.Width; position++)
            {
                var key = (delivery.Sink.Value + position, delivery.Source.Value + position, delivery.Sender);
                if (!bySink.TryGetValue(key, out var list))
                {
                    bySink.Add(key, list = []);
                }

                list.Add(chosen);
                wiring.Want(delivery, key.Item2, [chosen]);
                wiring.Place(key.Item1, key.Item2, chosen);
                CountStaying(demand, candidate, chosen, key.Item1, key.Item2);
            }

            KeepTogether(delivery, chosen);
        }

        foreach (var ((sink, source, sender), chosen) in bySink)
        {
            var slot = part.ReceiveSlotOf(new PointIndex(sink));
            var receiver = slot.IsNone ? null : wiring.ClassOf[part.ReceiveBlockOf(slot)];
            var taken = new Total().Add(chosen, -1);
            foreach (var take in receiver?.Takes ?? [])
            {
                if (part.TransmitBlocks[take.Block].Device != sender)
                {
                    continue;
                }

                taken.Add(take.Variable);
                var needed = new Total().Add(chosen).Add(take.Variable);
                var sent = take.Start + slot.Value - receiver!.Block.First.Value;
                if (wiring.Carries(sent, source) is { } carried)
                {
                    needed.Add(carried, -1);
                    if (part.TransmitBlocks[take.Block].Bystanders.Count > 0)
                    {
                        var used = model.NewBoolVar("");
                        model.AddImplication(used, take.Variable);
                        new Total().Add(used).Add(chosen, -1).AtMost(model, 0);
                        wiring.Uses.Add((sent, source, used));
                    }
                }

                needed.AtMost(model, 1);
            }

            taken.AtLeast(model, 0);
        }
    }

    /// <summary>Both halves of a pair come in one stream, even where they come through two receive blocks.</summary>
    private void KeepTogether(PartDelivery delivery, BoolVar chosen)
    {
        var second = delivery.Width == 2 ? part.ReceiveSlotOf(delivery.Sink + 1) : PointIndex.None;
        if (second.IsNone || wiring.ClassOf[part.ReceiveBlockOf(second)] == wiring.ClassOf[part.ReceiveBlockOf(part.ReceiveSlotOf(delivery.Sink))])
        {
            return;
        }

        var first = wiring.ClassOf[part.ReceiveBlockOf(part.ReceiveSlotOf(delivery.Sink))]!;
        var other = wiring.ClassOf[part.ReceiveBlockOf(second)]!;
        foreach (var block in first.Takes.Concat(other.Takes).Select(take => take.Block).Distinct())
        {
            new Total()
                .Add(first.Takes.Where(take => take.Block == block).Select(take => take.Variable))
                .Add(other.Takes.Where(take => take.Block == block).Select(take => take.Variable), -1)
                .Add(chosen)
                .AtMost(model, 1);
        }
    }

    private void CountStaying(int demand, PartCandidate candidate, BoolVar chosen, int sink, int source)
    {
        var slot = part.ReceiveSlotOf(new PointIndex(sink));
        var receiver = wiring.ClassOf[part.ReceiveBlockOf(slot)]!;
        foreach (var take in receiver.Takes)
        {
            if (wiring.HasLinkSeparation(demand))
            {
                new Total().Add(chosen).Add(take.Variable).Add(wiring.StreamUsed(demand, take.Block), -1).AtMost(model, 1);
            }

            if (!candidate.IsExisting)
            {
                continue;
            }

            var sent = take.Start + slot.Value - receiver.Block.First.Value;
            if (part.Show.Graph.Upstream(new PointIndex(sent)).Value != wiring.Real(source))
            {
                new Total().Add(chosen).Add(take.Variable).Add(wiring.Rewritten(sent), -1).AtMost(model, 1);
            }

            if (receiver.Block.InputStart.Value != take.Start)
            {
                new Total().Add(chosen).Add(take.Variable).Add(wiring.RewrittenBlock(receiver.Block), -1).AtMost(model, 1);
            }
        }
    }
}
