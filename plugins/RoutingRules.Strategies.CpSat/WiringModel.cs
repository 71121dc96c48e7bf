using RoutingRules.Assignment;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Contents of transmit slots, what receive blocks take, and what that costs.</summary>
internal sealed class WiringModel
{
    private readonly AssignmentPart part;
    private readonly WiringVariables wiring;

    public WiringModel(AssignmentPart part, PlacementModel placements)
    {
        this.part = part;
        var model = placements.Model;
        wiring = new WiringVariables(part, placements);
        new ReceiverModel(part, model, wiring).AddReceivers();
        var settled = new FixedDeliveries(part, placements, wiring);
        settled.AddFixedDeliveries();
        settled.CountSettled();
        settled.AddSlotSinks();
        new FreeDeliveries(part, model, wiring).AddNeeds();
        new SilenceConstraints(part, model, wiring).AddSilence();
        var blocks = new BlockConstraints(part, model, wiring);
        blocks.AddTransmitBlocks();
        blocks.AddStreamLimits();
        new CutConstraints(part, model, wiring).AddCuts();
        new BystanderConstraints(part, model, wiring).AddBystanders();
        var links = new LinkConstraints(part, model, wiring);
        links.AddLinkRoom();
        links.AddLinkSeparations();
        foreach (var list in wiring.Contents.Values)
        {
            model.AddAtMostOne(list.Select(entry => entry.Variable));
        }
    }

    /// <summary>Slots, blocks and sinks under demands that stay and that change.</summary>
    public Total Rewritten() => new Total().Add(wiring.RewrittenPoints.Values).Add(wiring.RewrittenBlocks.Values);

    /// <summary>Transmit blocks used, those of streams that stay included.</summary>
    public Total TransmitBlocks() => new Total().Add(wiring.Sent.Values).Plus(part.TransmitBlocks.Count(block => block.IsHeard));

    /// <summary>Receive blocks used, those of streams that stay included.</summary>
    public Total ReceiveBlocks()
    {
        var total = new Total().Plus(part.ReceiveBlocks.Count(block => block.IsKept));
        foreach (var receiver in wiring.Receivers)
        {
            if (!receiver.Block.IsKept && receiver.Block.CarrierFrom < 0)
            {
                total.Add(receiver.Takes.Select(take => take.Variable));
            }
        }

        return total;
    }
}
