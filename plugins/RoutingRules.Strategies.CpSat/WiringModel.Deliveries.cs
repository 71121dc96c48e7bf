using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <content>What chosen candidates ask of the wiring.</content>
internal sealed partial class WiringModel
{
    /// <summary>Transmit slots and sinks under demands that stay: whether they take something else.</summary>
    private readonly SortedDictionary<int, BoolVar> rewrittenPoints = [];
    private readonly Dictionary<PartReceiveBlock, BoolVar> rewrittenBlocks = [];
    private readonly List<(int Slot, int Source, BoolVar Used)> uses = [];
    private readonly Dictionary<(int Demand, int Block), BoolVar> streamsUsed = [];

    /// <summary>For each sink the placements that put something there over the network.</summary>
    private readonly SortedDictionary<int, List<(int Source, BoolVar Chosen)>> placedAt = [];

    /// <summary>A transmit slot that a line names carries the line, in whatever block is sent.</summary>
    private void AddSlotSinks()
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
                        if (Carries(delivery.Sink.Value + position, delivery.Source.Value + position) is { } filled)
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
    private void CountSettled()
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
                            model.AddImplication(placements.Chosen[demand][index], Rewritten(sink.Value));
                        }
                    }
                }
            }
        }
    }

    private void AddFixedDeliveries()
    {
        var bySink = new SortedDictionary<(int Sink, int Source, int Sender), List<BoolVar>>();
        foreach (var (demand, candidate, chosen, delivery) in Deliveries())
        {
            if (part.ReceiveSlotOf(delivery.Sink).IsNone)
            {
                for (var position = 0; position < delivery.Width; position++)
                {
                    Place(delivery.Sink.Value + position, delivery.Source.Value + position, chosen);
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
                Want(delivery, key.Item2, [chosen]);
                Place(key.Item1, key.Item2, chosen);
                CountStaying(demand, candidate, chosen, key.Item1, key.Item2);
            }

            KeepTogether(delivery, chosen);
        }

        foreach (var ((sink, source, sender), chosen) in bySink)
        {
            var slot = part.ReceiveSlotOf(new PointIndex(sink));
            var receiver = slot.IsNone ? null : classOf[part.ReceiveBlockOf(slot)];
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
                if (Carries(sent, source) is { } carried)
                {
                    needed.Add(carried, -1);
                    if (part.TransmitBlocks[take.Block].Bystanders.Count > 0)
                    {
                        var used = model.NewBoolVar("");
                        model.AddImplication(used, take.Variable);
                        new Total().Add(used).Add(chosen, -1).AtMost(model, 0);
                        uses.Add((sent, source, used));
                    }
                }

                needed.AtMost(model, 1);
            }

            taken.AtLeast(model, 0);
        }
    }

    private void Place(int sink, int source, BoolVar chosen)
    {
        if (!placedAt.TryGetValue(sink, out var list))
        {
            placedAt.Add(sink, list = []);
        }

        list.Add((Real(source), chosen));
    }

    /// <summary>Both halves of a pair come in one stream, even where they come through two receive blocks.</summary>
    private void KeepTogether(PartDelivery delivery, BoolVar chosen)
    {
        var second = delivery.Width == 2 ? part.ReceiveSlotOf(delivery.Sink + 1) : PointIndex.None;
        if (second.IsNone || classOf[part.ReceiveBlockOf(second)] == classOf[part.ReceiveBlockOf(part.ReceiveSlotOf(delivery.Sink))])
        {
            return;
        }

        var first = classOf[part.ReceiveBlockOf(part.ReceiveSlotOf(delivery.Sink))]!;
        var other = classOf[part.ReceiveBlockOf(second)]!;
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
        var receiver = classOf[part.ReceiveBlockOf(slot)]!;
        foreach (var take in receiver.Takes)
        {
            if (HasLinkSeparation(demand))
            {
                new Total().Add(chosen).Add(take.Variable).Add(StreamUsed(demand, take.Block), -1).AtMost(model, 1);
            }

            if (!candidate.IsExisting)
            {
                continue;
            }

            var sent = take.Start + slot.Value - receiver.Block.First.Value;
            if (part.Show.Graph.Upstream(new PointIndex(sent)).Value != Real(source))
            {
                new Total().Add(chosen).Add(take.Variable).Add(Rewritten(sent), -1).AtMost(model, 1);
            }

            if (receiver.Block.InputStart.Value != take.Start)
            {
                new Total().Add(chosen).Add(take.Variable).Add(RewrittenBlock(receiver.Block), -1).AtMost(model, 1);
            }
        }
    }

    /// <summary>
    /// Freely routed sinks: some slot that carries the source has to be taken. Demands that stay and those kept apart by link choose their own.
    /// </summary>
    private void AddNeeds()
    {
        var needs = new Dictionary<(int Receiver, int Source, int Width, int PortGroup, int Own, int First, int Second), Need>();
        var order = new List<Need>();
        foreach (var (demand, candidate, chosen, delivery) in Deliveries())
        {
            if (!part.ReceiveSlotOf(delivery.Sink).IsNone)
            {
                continue;
            }

            var own = candidate.IsExisting || HasLinkSeparation(demand) ? demand : -1;
            var graph = part.Show.Graph;
            var key = (
                delivery.Receiver,
                delivery.Source.Value,
                delivery.Width,
                part.PortGroupOf(delivery.Sink),
                own < 0 ? -1 : (own * 2) + (candidate.IsExisting ? 1 : 0),
                candidate.IsExisting ? graph.Upstream(delivery.Sink).Value : -1,
                candidate.IsExisting && delivery.Width == 2 ? graph.Upstream(delivery.Sink + 1).Value : -1
            );
            if (!needs.TryGetValue(key, out var need))
            {
                need = new Need(own, model.NewBoolVar(""), delivery, candidate.IsExisting, []);
                needs.Add(key, need);
                order.Add(need);
            }

            need.Asking.Add((chosen, delivery.Sink));
            model.AddImplication(chosen, need.Needed);
        }

        order.ForEach(AddNeed);
    }

    /// <summary>Freely routed sinks that are served in one way.</summary>
    /// <param name="Own">The demand that has the need for itself; -1 when any may share it.</param>
    /// <param name="Needed">Whether it has to be served.</param>
    /// <param name="Delivery">One of its deliveries.</param>
    /// <param name="IsKept">True when the demand stays where it was.</param>
    /// <param name="Asking">The candidates that ask for it, each with its sink; those of a demand that stays hang on one point in the input.</param>
    private sealed record Need(int Own, BoolVar Needed, PartDelivery Delivery, bool IsKept, List<(BoolVar Chosen, PointIndex Sink)> Asking);

    private void AddNeed(Need need)
    {
        var (own, needed, delivery, isKept, asking) = need;
        var balance = new SortedDictionary<int, Total>();
        for (var position = 0; position < delivery.Width; position++)
        {
            var source = delivery.Source.Value + position;
            Want(delivery, source, [needed]);
            var chosen = new Total().Add(needed, -1);
            foreach (var (takers, block, start, width) in Runs(delivery, isKept))
            {
                for (var slot = start; slot < start + width; slot++)
                {
                    if (Carries(slot, source) is not { } carried)
                    {
                        continue;
                    }

                    var used = model.NewBoolVar("");
                    model.AddImplication(used, carried);
                    new Total().Add(used).Add(takers.Select(taker => taker.Take.Variable), -1).AtMost(model, 0);
                    chosen.Add(used);
                    uses.Add((slot, source, used));
                    if (!balance.TryGetValue(block, out var total))
                    {
                        balance.Add(block, total = new Total());
                    }

                    total.Add(used, position == 0 ? 1 : -1);
                    if (own >= 0 && HasLinkSeparation(own))
                    {
                        model.AddImplication(used, StreamUsed(own, block));
                    }

                    if (isKept && part.Show.Graph.Upstream(new PointIndex(slot)).Value != Real(source))
                    {
                        model.AddImplication(used, Rewritten(slot));
                    }

                    var arriving = takers[0].Receiver.Block.First + (slot - start);
                    if (isKept && part.Show.Graph.Upstream(delivery.Sink + position) != arriving)
                    {
                        foreach (var (asked, sink) in asking)
                        {
                            new Total().Add(asked).Add(used).Add(Rewritten(sink.Value + position), -1).AtMost(model, 1);
                        }
                    }

                    if (isKept && takers[0].Receiver.Block.InputStart.Value != start)
                    {
                        model.AddImplication(used, RewrittenBlock(takers[0].Receiver.Block));
                    }
                }
            }

            chosen.AtMost(model, 0);
            chosen.AtLeast(model, 0);
        }

        foreach (var total in delivery.Width == 2 ? balance.Values.AsEnumerable() : [])
        {
            total.AtMost(model, 0);
            total.AtLeast(model, 0);
        }
    }

    /// <summary>Runs of slots that can serve a freely routed sink, with who can take them; one taker at a time where it matters which.</summary>
    private IEnumerable<(List<(ReceiveClass Receiver, Take Take)> Takers, int Block, int Start, int Width)> Runs(PartDelivery delivery, bool isKept)
    {
        var runs = new SortedDictionary<(int Block, int Start, int Width, int Taker), List<(ReceiveClass, Take)>>();
        var receivers = classes[delivery.Receiver];
        for (var index = 0; index < receivers.Count; index++)
        {
            foreach (var take in part.CanTake(delivery.Sink, receivers[index].Block) ? receivers[index].Takes : [])
            {
                var key = (take.Block, take.Start, receivers[index].Block.Width, isKept ? index : -1);
                if (part.TransmitBlocks[take.Block].Device != delivery.Sender)
                {
                    continue;
                }

                if (!runs.TryGetValue(key, out var takers))
                {
                    runs.Add(key, takers = []);
                }

                takers.Add((receivers[index], take));
            }
        }

        return runs.Select(run => (run.Value, run.Key.Block, run.Key.Start, run.Key.Width));
    }

    private BoolVar Rewritten(int point)
    {
        if (!rewrittenPoints.TryGetValue(point, out var variable))
        {
            rewrittenPoints.Add(point, variable = model.NewBoolVar(""));
        }

        return variable;
    }

    private BoolVar RewrittenBlock(PartReceiveBlock block)
    {
        if (!rewrittenBlocks.TryGetValue(block, out var variable))
        {
            rewrittenBlocks.Add(block, variable = model.NewBoolVar(""));
        }

        return variable;
    }
}
