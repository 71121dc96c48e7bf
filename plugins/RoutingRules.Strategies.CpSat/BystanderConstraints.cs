using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Receivers that no demand mentions stay in a block unless what they take becomes something else.</summary>
internal sealed class BystanderConstraints(AssignmentPart part, CpModel model, WiringVariables wiring)
{
    public void AddBystanders()
    {
        foreach (var (id, isSent) in wiring.Sent)
        {
            var block = part.TransmitBlocks[id];
            var staying = block.Bystanders.Where(other => !part.ReceiveBlocks[other].InputStart.IsNone).ToList();
            if (block.IsKept || staying.Count == 0)
            {
                continue;
            }

            for (var slot = block.First.Value; slot < block.First.Value + block.Width; slot++)
            {
                foreach (var (_, carried) in wiring.Contents.GetValueOrDefault(slot, []))
                {
                    // A slot carries nothing that nobody takes, or a useless source could send wiring.Bystanders away.
                    new Total()
                        .Add(carried)
                        .Add(wiring.Uses.Where(use => ReferenceEquals(wiring.Carries(use.Slot, use.Source), carried)).Select(use => use.Used), -1)
                        .AtMost(model, 0);
                }
            }

            foreach (var other in staying)
            {
                // It stays in a block that is wiring.Sent unless one of its slots gets another source than it had.
                var stays = model.NewBoolVar("");
                var change = new Total().Add(stays).Add(isSent, -1);
                var first = part.ReceiveBlocks[other].InputStart.Value;
                for (var slot = first; slot < first + part.ReceiveBlocks[other].Width; slot++)
                {
                    var before = part.Show.Graph.Upstream(new PointIndex(slot)).Value;
                    change.Add(wiring.Contents.GetValueOrDefault(slot, []).Where(entry => entry.Source != before).Select(entry => entry.Variable));
                }

                change.AtLeast(model, 0);
                wiring.Bystanders.Add((id, other), stays);
            }
        }
    }
}
