using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Takes a receiver out of which no slot is heard, because another claims all of them first. Unsafe: the other may be the one that is wrong.</summary>
internal sealed class TakeOutUnheardReceiver : FixProvider
{
    public override string RuleId => "RR4002";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var index = finding.Number(2);
        var receiver = finding.Number(4);
        var slots = context.RunOf(finding, "slots");
        if (
            index < 0
            || index >= context.Resolved.Streams.Count
            || context.Resolved.Streams[index].Model is not { } stream
            || receiver < 0
            || receiver >= stream.To.Count
        )
        {
            return [];
        }

        var at = stream.To[receiver].At;
        return context.Resolved.Graph.Find(at, out var first) != ConnectionState.Connected || !slots.Has(first) || !slots.Has(first + (at.Width - 1))
            ? []
            :
            [
                Fix.Of(
                    $"Take the receiver at {at} out of stream '{stream.Id}', which is not heard there",
                    FixSafety.Unsafe,
                    [ShowEdit.Remove(ShowLists.Receivers(index), receiver, stream.To[receiver])],
                    "Ask which of the two streams is meant to play there."
                ),
            ];
    }
}
