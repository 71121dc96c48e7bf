using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Links that could be overfilled, and demands that must not share one.</summary>
internal sealed class LinkConstraints(AssignmentPart part, CpModel model, WiringVariables wiring)
{
    /// <summary>Each stream counts once on every direction of a link that leads to one of its receivers.</summary>
    public void AddLinkRoom()
    {
        if (part.Links.Count == 0)
        {
            return;
        }

        var passes = new SortedDictionary<(int Link, int Block), BoolVar>();
        foreach (var receiver in wiring.Receivers)
        {
            foreach (var take in receiver.Takes)
            {
                if (!receiver.Block.IsKept && receiver.Block.CarrierFrom < 0)
                {
                    Pass(take.Block, receiver.Block.Device, take.Variable);
                }
            }
        }

        foreach (var ((id, other), stays) in wiring.Bystanders)
        {
            Pass(id, part.ReceiveBlocks[other].Device, stays);
        }

        foreach (var link in passes.GroupBy(entry => entry.Key.Link))
        {
            var taken = new Total();
            foreach (var ((_, block), passed) in link)
            {
                taken.Add(passed, part.LoadOf(block, link.Key));
            }

            taken.AtMost(model, part.Links[link.Key].Room);
        }

        void Pass(int block, int receiver, BoolVar when)
        {
            foreach (var link in part.LinksPassed(part.TransmitBlocks[block].Device, receiver))
            {
                if (part.Links[link].Staying.Contains(block))
                {
                    continue;
                }

                if (!passes.TryGetValue((link, block), out var passed))
                {
                    passes.Add((link, block), passed = model.NewBoolVar(""));
                }

                model.AddImplication(when, passed);
            }
        }
    }

    public void AddLinkSeparations()
    {
        var links = new Dictionary<(int Demand, int Link), BoolVar>();
        foreach (var ((demand, block), used) in wiring.StreamsUsed.OrderBy(entry => entry.Key))
        {
            foreach (var receiver in wiring.Receivers)
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

            foreach (var ((_, other), stays) in wiring.Bystanders.Where(entry => entry.Key.Block == block))
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
