using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <summary>What chosen candidates ask of the wiring at sinks that their device routes freely.</summary>
internal sealed class FreeDeliveries(AssignmentPart part, CpModel model, WiringVariables wiring)
{
    /// <summary>Freely routed sinks that are served in one way.</summary>
    /// <param name="Own">The demand that has the need for itself; -1 when any may share it.</param>
    /// <param name="Needed">Whether it has to be served.</param>
    /// <param name="Delivery">One of its deliveries.</param>
    /// <param name="IsKept">True when the demand stays where it was.</param>
    /// <param name="Asking">The candidates that ask for it, each with its sink; those of a demand that stays hang on one point in the input.</param>
    private sealed record Need(int Own, BoolVar Needed, PartDelivery Delivery, bool IsKept, List<(BoolVar Chosen, PointIndex Sink)> Asking);

    /// <summary>
    /// Freely routed sinks: some slot that carries the source has to be taken. Demands that stay and those kept apart by link choose their own.
    /// </summary>
    public void AddNeeds()
    {
        var needs = new Dictionary<(int Receiver, int Source, int Width, int PortGroup, int Own, int First, int Second), Need>();
        var order = new List<Need>();
        foreach (var (demand, candidate, chosen, delivery) in wiring.Deliveries())
        {
            if (!part.ReceiveSlotOf(delivery.Sink).IsNone)
            {
                continue;
            }

            var own = candidate.IsExisting || wiring.HasLinkSeparation(demand) ? demand : -1;
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

    private void AddNeed(Need need)
    {
        var (own, needed, delivery, isKept, asking) = need;
        var balance = new SortedDictionary<int, Total>();
        for (var position = 0; position < delivery.Width; position++)
        {
            var source = delivery.Source.Value + position;
            wiring.Want(delivery, source, [needed]);
            var chosen = new Total().Add(needed, -1);
            foreach (var (takers, block, start, width) in Runs(delivery, isKept))
            {
                for (var slot = start; slot < start + width; slot++)
                {
                    if (wiring.Carries(slot, source) is not { } carried)
                    {
                        continue;
                    }

                    var used = model.NewBoolVar("");
                    model.AddImplication(used, carried);
                    new Total().Add(used).Add(takers.Select(taker => taker.Take.Variable), -1).AtMost(model, 0);
                    chosen.Add(used);
                    wiring.Uses.Add((slot, source, used));
                    if (!balance.TryGetValue(block, out var total))
                    {
                        balance.Add(block, total = new Total());
                    }

                    total.Add(used, position == 0 ? 1 : -1);
                    if (own >= 0 && wiring.HasLinkSeparation(own))
                    {
                        model.AddImplication(used, wiring.StreamUsed(own, block));
                    }

                    if (isKept && part.Show.Graph.Upstream(new PointIndex(slot)).Value != wiring.Real(source))
                    {
                        model.AddImplication(used, wiring.Rewritten(slot));
                    }

                    var arriving = takers[0].Receiver.Block.First + (slot - start);
                    if (isKept && part.Show.Graph.Upstream(delivery.Sink + position) != arriving)
                    {
                        foreach (var (asked, sink) in asking)
                        {
                            new Total().Add(asked).Add(used).Add(wiring.Rewritten(sink.Value + position), -1).AtMost(model, 1);
                        }
                    }

                    if (isKept && takers[0].Receiver.Block.InputStart.Value != start)
                    {
                        model.AddImplication(used, wiring.RewrittenBlock(takers[0].Receiver.Block));
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
        var receivers = wiring.Classes[delivery.Receiver];
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
}
