using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Takes a stream out that nobody receives, with the routes into slots that nothing else sends where they would be left over.</summary>
internal sealed class TakeOutUnheardStream : FixProvider
{
    public override string RuleId => "RR4005";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var index = finding.Number(2);
        if (index < 0 || index >= context.Resolved.Streams.Count)
        {
            return [];
        }

        var stream = context.Resolved.Streams[index].Model;
        var removal = ShowEdit.Remove(ShowLists.Streams, index, stream);
        var title = $"Take out stream '{stream.Id}', which nobody receives";
        var routes = RouteEdits.TakeOut(
            context,
            (route, position) => IsIn(stream, route.Model.To, position) && !IsSent(context, index, route.Model.To, position)
        );
        return
        [
            Fix.Of(title, FixSafety.Safe, [removal]),
            .. routes.Count == 0 ? [] : new[] { Fix.Of($"{title}, and the routes to its slots", FixSafety.Safe, [.. routes, removal]) },
            Fix.Manual("Keep the stream", "Name its receiver", "Mark it with keep when a device outside the document receives it"),
        ];
    }

    private static bool IsSent(FixContext context, int except, PointRange at, int position)
    {
        foreach (var stream in context.Resolved.Streams)
        {
            if (stream.Index != except && IsIn(stream.Model, at, position))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsIn(AudioStream stream, PointRange at, int position) =>
        stream.From.Device == at.Device && stream.From.Group == at.Group && at.First + position >= stream.From.First && at.First + position <= stream.From.Last;
}
