using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Keeps outputs silent that nobody placed anything at, and what is private from loudspeakers.</summary>
internal sealed class SilenceConstraints(AssignmentPart part, CpModel model, WiringVariables wiring)
{
    public void AddSilence()
    {
        foreach (var receiver in wiring.Receivers)
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
            foreach (var (source, carried) in wiring.Carried(take.Start + position))
            {
                if (part.IsPrivate(new PointIndex(source)))
                {
                    new Total().Add(take.Variable).Add(carried).AtMost(model, 1);
                }
            }
        }
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
                foreach (var (_, chosen) in wiring.PlacedAt.GetValueOrDefault(sink.Value, []))
                {
                    model.AddImplication(chosen, isRouted);
                }
            }
        }

        foreach (var take in receiver.Takes)
        {
            foreach (var (source, carried) in wiring.Carried(take.Start + position))
            {
                if (part.ToleratedAt(output).Value == source)
                {
                    continue;
                }

                var loud = new Total().Add(take.Variable).Add(carried);
                foreach (var (placed, chosen) in wiring.PlacedAt.GetValueOrDefault(output.Value, []))
                {
                    loud.Add(chosen, placed == source ? -1 : 0);
                }

                loud.Add(isRouted ?? wiring.Always).AtMost(model, 2);
            }
        }
    }
}
