using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>What else there is to say about a loss: what goes with it, who takes over, what would mend it quickest.</summary>
internal static class LossRemarks
{
    /// <summary>The remarks.</summary>
    public static ValueList<string> Of(ResolvedShow show, LossUnits units, int[] which, LossSet lost, List<NetworkPath> rerouted)
    {
        var remarks = new List<string>();
        var drawn = show
            .Devices.Where(device =>
                lost.Devices[device.Index] && which.All(unit => units.All[unit].Thing.Kind != LossKind.Device || units.All[unit].Index != device.Index)
            )
            .Select(device => device.Id.Value)
            .ToArray();
        if (drawn.Length > 0)
        {
            remarks.Add(
                drawn.Length == 1 ? $"{drawn[0]} goes with it: it has no other supply." : $"{Wording.List(drawn)} go with it: they have no other supply."
            );
        }

        foreach (var device in show.Devices.Where(device => lost.Devices[device.Index]))
        {
            foreach (var clock in show.Document.Rig.Clocks.Where(clock => clock.Leader == device.Id))
            {
                var isCovered = clock.Backup is { } backup && show.Graph.Device(backup) is { } other && !lost.Devices[other.Index];
                remarks.Add(
                    isCovered
                        ? $"{device.Id} leads clock '{clock.Id}'; {clock.Backup} has to take over, which may be heard as a gap."
                        : $"{device.Id} leads clock '{clock.Id}' and nothing in the document takes over: all that runs on it may stop, also what is "
                            + "said to go on."
                );
            }
        }

        foreach (var network in rerouted.Select(way => way.Network).Distinct().Order().Select(network => show.Document.Rig.Networks[network]))
        {
            if (network.LoopControl == LoopControl.None)
            {
                remarks.Add($"Streams of network '{network.Id}' go on only if something manages its loops; the document names no loop control.");
            }
        }

        foreach (var unit in which.Select(unit => units.All[unit]))
        {
            if (unit.Thing.Kind == LossKind.Link)
            {
                var link = show.Links[unit.Index].Model;
                remarks.Add($"The quickest mend may be a spare network cable from {link.From} to {link.To}.");
            }
            else if (unit.Thing.Kind is LossKind.Cable or LossKind.Way)
            {
                remarks.Add(
                    $"The quickest mend may be {(unit.Cables.Length == 1 ? "a spare cable" : "spare cables")}: "
                        + $"{string.Join(", ", unit.Cables.Select(cable => $"{show.Cables[cable].Model.From} to {show.Cables[cable].Model.To}"))}."
                );
            }
        }

        return remarks.ToValueList();
    }
}
