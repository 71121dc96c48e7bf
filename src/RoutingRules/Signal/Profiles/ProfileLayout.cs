using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Signal.Profiles;

/// <summary>A compiled profile in the making.</summary>
internal sealed class ProfileLayout
{
    private readonly DeviceProfile profile;
    private readonly GroupNode[] groups;
    private readonly List<ProfileProblem> problems;
    private readonly ushort[] groupOf;
    private readonly int[] upstream;
    private readonly HopKind[] via;
    private readonly int[] fixedSource;
    private readonly bool[] clearable;
    private readonly RoutingEntry?[] routing;

    public ProfileLayout(DeviceProfile profile, GroupNode[] groups, int pointCount, List<ProfileProblem> problems)
    {
        this.profile = profile;
        this.groups = groups;
        this.problems = problems;
        groupOf = new ushort[pointCount];
        upstream = new int[pointCount];
        via = new HopKind[pointCount];
        fixedSource = new int[pointCount];
        clearable = new bool[pointCount];
        routing = new RoutingEntry?[groups.Length * groups.Length];
        Array.Fill(upstream, -1);
        Array.Fill(fixedSource, CompiledProfile.NotFixed);
        foreach (var group in groups)
        {
            groupOf.AsSpan(group.Offset, group.Count).Fill((ushort)group.Index);
        }
    }

    public void AddRouting()
    {
        for (var i = 0; i < profile.Routing.Count; i++)
        {
            var entry = profile.Routing[i];
            var at = $"/routing/{i}";
            if (Find(entry.From, $"{at}/from") is not { } from || Find(entry.To, $"{at}/to") is not { } to)
            {
                continue;
            }

            if (
                from.Kind is not (PortKind.Source or PortKind.Input or PortKind.Receive)
                || to.Kind is not (PortKind.Sink or PortKind.Output or PortKind.Transmit)
            )
            {
                Report(at, $"Routing from '{from.Id}' to '{to.Id}' cannot be: sources, inputs and receive slots feed sinks, outputs and transmit slots.");
                continue;
            }

            ref var cell = ref routing[(from.Index * groups.Length) + to.Index];
            if (cell is not null)
            {
                Report(at, $"Routing from '{from.Id}' to '{to.Id}' is listed twice; the first entry counts.");
                continue;
            }

            if (entry.Mode == RoutingMode.Block && (entry.BlockSize ?? 1) > 1 && from.Count % entry.BlockSize!.Value != 0)
            {
                Report($"{at}/blockSize", $"Port group '{from.Id}' has {from.Count} points, which is not a whole number of blocks of {entry.BlockSize}.");
            }

            if (entry.Clearable && entry.Mode != RoutingMode.Fixed)
            {
                Report($"{at}/clearable", $"Only fixed routing can be clearable; routing from '{from.Id}' to '{to.Id}' is not fixed.");
            }

            cell = entry;
            if (entry.Mode == RoutingMode.Fixed)
            {
                Fix(from, to, entry.Clearable, HopKind.Fixed, at);
            }
        }
    }

    public void AddThrough()
    {
        for (var i = 0; i < profile.Through.Count; i++)
        {
            var entry = profile.Through[i];
            var at = $"/through/{i}";
            if (Find(entry.From, $"{at}/from") is not { } from || Find(entry.To, $"{at}/to") is not { } to)
            {
                continue;
            }

            if (from.Kind is not (PortKind.Sink or PortKind.Input) || to.Kind is not (PortKind.Source or PortKind.Output))
            {
                Report(at, $"A path from '{from.Id}' to '{to.Id}' cannot be: paths lead from sinks or inputs to sources or outputs.");
            }
            else if (entry.Kind == ThroughKind.Select)
            {
                to.IsOrigin = true;
                Fix(null, to, false, HopKind.None, at);
            }
            else
            {
                to.IsOrigin = false;
                Fix(from, to, false, HopKind.Through, at);
            }
        }
    }

    public void AddFactoryRoutes()
    {
        for (var i = 0; i < profile.FactoryRoutes.Count; i++)
        {
            var route = profile.FactoryRoutes[i];
            var at = $"/factoryRoutes/{i}";
            if (Find(route.From.Group, $"{at}/from") is not { } from || Find(route.To.Group, $"{at}/to") is not { } to)
            {
                continue;
            }

            if (route.From.Last > from.Count || route.To.Last > to.Count || route.From.Width != route.To.Width)
            {
                Report(at, $"Factory route {route.From} to {route.To} is wider than a group or of unequal width; it is left out.");
                continue;
            }

            for (var position = 0; position < route.From.Width; position++)
            {
                var sink = to.Offset + route.To.First - 1 + position;
                if (via[sink] == HopKind.None && fixedSource[sink] == CompiledProfile.NotFixed)
                {
                    upstream[sink] = from.Offset + route.From.First - 1 + position;
                    via[sink] = HopKind.Factory;
                }
                else
                {
                    Report(at, $"Factory route {route.From} to {route.To} meets a sink that already has a source ({to.Id}/{route.To.First + position}).");
                    break;
                }
            }
        }
    }

    public void CheckDetails()
    {
        for (var i = 0; i < profile.PortGroups.Count; i++)
        {
            var group = profile.PortGroups[i];
            var at = $"/portGroups/{i}";
            if (
                group.Carrier is { } carrier
                && Find(carrier.Group, $"{at}/carrier") is { } jacks
                && (carrier.Width != 1 || jacks.Kind != PortKind.Network || carrier.Last > jacks.Count)
            )
            {
                Report($"{at}/carrier", $"Carrier {carrier} of '{group.Id}' is not one network jack of the device.");
            }

            if (!group.PanelLabels.IsEmpty && group.PanelLabels.Count != groups[i].Count && group.Count is not null)
            {
                Report($"{at}/panelLabels", $"Port group '{group.Id}' has {groups[i].Count} points but {group.PanelLabels.Count} panel labels.");
            }

            for (var set = 0; set < group.Bridged.Count; set++)
            {
                if (group.Kind != PortKind.Network || group.Bridged[set].Jacks.Last > groups[i].Count)
                {
                    Report($"{at}/bridged/{set}", $"Bridged jacks {group.Bridged[set].Jacks} of '{group.Id}' are not network jacks of the group.");
                }
            }
        }

        for (var i = 0; i < profile.LatencyMilliseconds.Count; i++)
        {
            Find(profile.LatencyMilliseconds[i].Group, $"/latencyMilliseconds/{i}/group");
        }
    }

    public CompiledProfile Build() =>
        new()
        {
            Model = profile,
            Groups = groups,
            PointCount = groupOf.Length,
            GroupOf = groupOf,
            Upstream = upstream,
            Via = via,
            FixedSource = fixedSource,
            Clearable = clearable,
            Routing = routing,
            Problems = problems.ToValueList(),
        };

    private void Fix(GroupNode? from, GroupNode to, bool canClear, HopKind kind, string at)
    {
        for (var position = 0; position < to.Count; position++)
        {
            var sink = to.Offset + position;
            if (fixedSource[sink] >= 0)
            {
                if (from is not null && position < from.Count)
                {
                    Report(at, $"Two fixed entries meet at {to.Id}/{position + 1}; the first one counts.");
                    return;
                }

                continue;
            }

            if (from is null || position >= from.Count)
            {
                fixedSource[sink] = CompiledProfile.FixedSilent;
                continue;
            }

            fixedSource[sink] = from.Offset + position;
            upstream[sink] = from.Offset + position;
            via[sink] = kind;
            clearable[sink] = canClear;
        }
    }

    private GroupNode? Find(Id<PortGroup> id, string pointer)
    {
        foreach (var group in groups)
        {
            if (group.Id == id)
            {
                return group;
            }
        }

        Report(pointer, $"The profile has no port group '{id}'.");
        return null;
    }

    private void Report(string pointer, string message) => problems.Add(new ProfileProblem { Pointer = pointer, Message = message });
}
