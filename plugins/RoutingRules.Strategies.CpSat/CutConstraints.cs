using Google.OrTools.Sat;
using RoutingRules.Assignment;

namespace RoutingRules.Strategies.CpSat;

/// <summary>What follows from the other constraints and cuts the search short.</summary>
internal sealed class CutConstraints(AssignmentPart part, CpModel model, WiringVariables wiring)
{
    /// <summary>Every source that a device wants takes a slot of what it receives, and a slot of what the sender sends.</summary>
    public void AddCuts()
    {
        var sending = new SortedDictionary<int, SortedDictionary<int, List<BoolVar>>>();
        foreach (var ((receiver, sender), bySource) in wiring.Wanted.OrderBy(entry => entry.Key))
        {
            var slots = new Total();
            foreach (var from in wiring.Classes.GetValueOrDefault(receiver, []))
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
                if (block.Device == sender && wiring.Sent.TryGetValue(id, out var isSent))
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
}
