using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports routes between port groups that a device cannot connect. Devices with an unsound profile are left to that rule.</summary>
public sealed class RouteNotAllowed : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2005",
            Name = "route-not-allowed",
            Title = "Route the device cannot make",
            Family = RuleFamily.Points,
            Severity = Severity.Error,
            Checks = "Every route joins two port groups between which the device's profile has a routing entry.",
            Why = "The device offers no such route, so the crew will not find it in its patch page, and the signal will not arrive.",
            Remedy = "Go through a group that can reach the sink, or use another sink.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, Output Routing Constraints",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        SinkRuns? faults = null;
        foreach (var route in context.Routes)
        {
            context.LookedAt(route.From.IsNone ? 0 : 1);
            if (route.From.IsNone || context.RoutingBetween(route.From, route.To) is not null || !context.ProfileProblems(context.DeviceOf(route.To)).IsEmpty)
            {
                continue;
            }

            faults ??= new SinkRuns();
            for (var position = 0; position < route.Model.To.Width; position++)
            {
                faults.Add(route.To + position, route.From + position, 0, route.Index);
            }
        }

        foreach (var run in faults?.Merge(context) ?? [])
        {
            var from = context.Address(run.Source, run.Width);
            var to = context.Address(run.Sink, run.Width);
            var feeders = Feeders(context, run.Sink);
            var hint =
                feeders.Count == 0 ? $"nothing can be routed to '{to.Group}' of this device" : $"'{to.Group}' takes signal from {Wording.Names(feeders)}";
            context.Report(
                $"'{context.DeviceOf(run.Sink).DisplayName}' cannot route {from} to {to}: {hint}.",
                new Place(context.Routes[run.Order].Model, "/patch/routes", run.Order).Pointer,
                Entity.Of("from", from),
                Entity.Of("to", to)
            );
        }
    }

    private static List<string> Feeders(RuleContext context, PointIndex sink)
    {
        var names = new List<string>();
        var device = context.DeviceOf(sink);
        foreach (var group in device.Groups)
        {
            if (group.Count > 0 && context.RoutingBetween(device.First(group), sink) is not null)
            {
                names.Add(group.Id.Value);
            }
        }

        return names;
    }
}
