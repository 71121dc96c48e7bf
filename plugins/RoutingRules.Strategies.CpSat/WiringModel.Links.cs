using Google.OrTools.Sat;

namespace RoutingRules.Strategies.CpSat;

/// <content>Links that could be overfilled.</content>
internal sealed partial class WiringModel
{
    /// <summary>Each stream counts once on every direction of a link that leads to one of its receivers.</summary>
    private void AddLinkRoom()
    {
        if (part.Links.Count == 0)
        {
            return;
        }

        var passes = new SortedDictionary<(int Link, int Block), BoolVar>();
        foreach (var receiver in classes.Values.SelectMany(list => list))
        {
            foreach (var take in receiver.Takes)
            {
                if (!receiver.Block.IsKept && receiver.Block.CarrierFrom < 0)
                {
                    Pass(take.Block, receiver.Block.Device, take.Variable);
                }
            }
        }

        foreach (var ((id, other), stays) in bystanders)
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
}
