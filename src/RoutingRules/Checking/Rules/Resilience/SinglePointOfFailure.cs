using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Resilience;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Resilience;

/// <summary>Reports devices and links whose loss silences a whole set, all mains or all in-ear feeds although the rig at hand could avoid it.</summary>
/// <remarks>
/// One finding for each device or link, listing what falls silent; the entity is the device or link. A warning where one of the feeds could leave from
/// another device that it may use, has free outputs and does not hang on the same thing. A console is a note, and only where it silences mains and in-ear
/// feeds at once beside another console. What silences no more than one told already is left out: moving one feed mends both. Devices are told before switches
/// and those
/// before links, what silences more before what silences less, whatever order the rig lists them in. What the rig
/// cannot avoid is said, as notes, only when the option asks for it.
/// </remarks>
public sealed class SinglePointOfFailure : Rule<ResolvedShow>
{
    private static readonly RuleOption ListUnavoidable = new()
    {
        Name = "listUnavoidable",
        Doc = "1 lists also, as notes, the devices and links whose loss the rig at hand cannot make good; 0 leaves them out.",
        Default = 0,
        Minimum = 0,
        Maximum = 1,
        IsWhole = true,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR8001",
            Name = "single-point-of-failure",
            Title = "One loss silences everything",
            Family = RuleFamily.Resilience,
            Severity = Severity.Warning,
            Severities = [Severity.Warning, Severity.Note],
            Checks = "No device or link alone carries a whole set, all mains or all in-ear feeds where another device could carry one of them.",
            Why = "One blown supply or one trodden cable and the whole room, or everybody on stage, hears nothing.",
            Remedy = "Move one of the feeds to the other device, or add a second path over the network.",
            Source = "common practice, no source; articulation points and bridges of the link graph",
            Fixability = Fixability.Manual,
            Options = [ListUnavoidable],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var losses = new SortedDictionary<int, Loss>();
        var map = LossMap.Of(context);
        foreach (var group in FeedGroups.Of(context))
        {
            context.LookedAt();
            Collect(map, group, losses);
        }

        if (losses.Count == 0)
        {
            return;
        }

        var told = new List<List<FeedGroups>>();
        foreach (
            var (lost, loss) in losses
                .OrderBy(entry => Rank(context, map, entry.Key))
                .ThenByDescending(entry => entry.Value.Groups.Count)
                .ThenBy(entry => Name(context, map, entry.Key), StringComparer.Ordinal)
        )
        {
            var isConsole = lost < map.CountOfDevices && context.Devices[lost].Profile.Kind == DeviceKind.Console;
            if (isConsole ? IsAvoidableConsole(context, lost, loss) : FindWayOut(context, map, lost, loss))
            {
                if (!isConsole && told.Exists(groups => loss.Groups.TrueForAll(groups.Contains)))
                {
                    continue;
                }

                told.Add(isConsole ? [] : loss.Groups);
                Report(context, map, lost, loss, isConsole ? Severity.Note : Severity.Warning);
            }
            else if (context.WholeValue(ListUnavoidable) == 1)
            {
                Report(context, map, lost, loss, Severity.Note);
            }
        }
    }

    private static void Collect(LossMap map, FeedGroups group, SortedDictionary<int, Loss> losses)
    {
        List<int>? common = null;
        var delivered = 0;
        foreach (var feed in group.Feeds)
        {
            if (common is not { Count: 0 } && map.Silencers(feed) is { } silencers)
            {
                common = LossMap.Intersect(common, silencers);
                delivered++;
            }
        }

        for (var i = 0; delivered > 1 && i < common!.Count; i++)
        {
            if (!losses.TryGetValue(common[i], out var loss))
            {
                losses.Add(common[i], loss = new Loss());
            }

            loss.Groups.Add(group);
        }
    }

    private static int Rank(RuleContext context, LossMap map, int lost) =>
        lost >= map.CountOfDevices ? 2
        : context.Devices[lost].Profile.Kind == DeviceKind.Switch ? 1
        : 0;

    private static string Name(RuleContext context, LossMap map, int lost) =>
        lost < map.CountOfDevices ? context.Devices[lost].Id.Value : context.Links[lost - map.CountOfDevices].Model.Id.Value;

    private static bool IsAvoidableConsole(RuleContext context, int lost, Loss loss)
    {
        if (!loss.Groups.Exists(group => group.IsInEar) || !loss.Groups.Exists(group => group.IsMain))
        {
            return false;
        }

        foreach (var device in context.Devices)
        {
            if (device.Index != lost && device.Profile.Kind == DeviceKind.Console)
            {
                loss.WayOut = $"{device.Id} is another console.";
                return true;
            }
        }

        return false;
    }

    /// <summary>Looks for a feed that could leave from another device.</summary>
    private static bool FindWayOut(RuleContext context, LossMap map, int lost, Loss loss)
    {
        foreach (var group in loss.Groups)
        {
            foreach (var feed in group.Feeds)
            {
                for (var entry = 0; entry < feed.Model.To.Count; entry++)
                {
                    var demand = context.Demand(feed, entry);
                    if (!demand.Existing.IsNone && Other(context, map, lost, feed, demand) is { IsNone: false } free)
                    {
                        loss.WayOut =
                            $"'{feed.DisplayName}' could leave from {context.Address(free, demand.Width)}, which {(demand.Width == 1 ? "is" : "are")} free.";
                        return true;
                    }
                }
            }
        }

        return false;
    }

    private static PointIndex Other(RuleContext context, LossMap map, int lost, FeedNode feed, DemandNode demand)
    {
        var source = context.DeviceOf(feed.Source);
        DeviceNode? refused = null;
        foreach (var run in demand.Allowed)
        {
            var device = context.DeviceOf(run);
            if (device.Index == lost || device == refused || device == context.DeviceOf(demand.Existing))
            {
                continue;
            }

            if (!FreeRuns.IsFree(context, run, demand) || IsPlayedBy(context, run, lost))
            {
                continue;
            }

            if (map.IsJoinedWithout(lost, source, device))
            {
                return run;
            }

            refused = device;
        }

        return PointIndex.None;
    }

    private static bool IsPlayedBy(RuleContext context, PointIndex output, int device)
    {
        foreach (var fed in context.Fed(output))
        {
            if (context.DeviceOf(new PointIndex(fed)).Index == device)
            {
                return true;
            }
        }

        return false;
    }

    private static void Report(RuleContext context, LossMap map, int lost, Loss loss, Severity severity)
    {
        var silent = Wording.List(loss.Groups.ConvertAll(group => $"{group.Title} ({Wording.List(group.Feeds.ConvertAll(feed => $"'{feed.DisplayName}'"))})"));
        var wayOut = loss.WayOut is null ? "" : $" {loss.WayOut}";
        var isDevice = lost < map.CountOfDevices;
        var (name, pointer, entity) = isDevice
            ? (context.Devices[lost].Id.Value, $"/rig/devices/{lost}", Entity.Of("device", context.Devices[lost].Id))
            : (
                $"link '{context.Links[lost - map.CountOfDevices].Model.Id}'",
                $"/rig/links/{lost - map.CountOfDevices}",
                Entity.Of("link", context.Links[lost - map.CountOfDevices].Model.Id)
            );
        context.ReportAs(
            severity,
            $"If {name} fails, this falls silent: {silent}.{wayOut}",
            pointer,
            [entity, .. loss.Groups.ConvertAll(group => Entity.Of(group.Kind, group.Name))]
        );
    }

    private sealed class Loss
    {
        public List<FeedGroups> Groups { get; } = [];

        public string? WayOut { get; set; }
    }
}
