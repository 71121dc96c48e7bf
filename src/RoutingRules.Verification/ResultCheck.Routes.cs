using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <content>Routes inside devices.</content>
internal sealed partial class ResultCheck
{
    private bool IsAllowed(Point from, Point to)
    {
        var device = rig.Device(to.Device);
        if (device?.Profile is not { } profile || from.Device != to.Device)
            return false;

        foreach (var entry in profile.Routing)
        {
            if (entry.From != from.Group || entry.To != to.Group)
                continue;

            var size = entry.BlockSize ?? 1;
            if (
                entry.Mode == RoutingMode.Free
                || (entry.Mode == RoutingMode.Fixed && from.Number == to.Number)
                || (entry.Mode == RoutingMode.Block && (from.Number - 1) % size == (to.Number - 1) % size)
            )
            {
                return true;
            }
        }

        return false;
    }

    private void CheckRoutes()
    {
        foreach (var point in after.Doubled.Except(before.Doubled))
            Report($"{point} takes two signals; keep one route or stream.");

        foreach (var route in result.Patch.Routes.Except(facts.Input.Patch.Routes))
        {
            if (!rig.Exists(route.To) || (route.From is { } from && (!rig.Exists(from) || from.Width != route.To.Width || from.Device != route.To.Device)))
            {
                Report($"The route from {route.From?.ToString() ?? "nothing"} to {route.To} connects nothing.");
                continue;
            }

            for (var i = 0; i < route.To.Width; i++)
                CheckRoute(route.From?[i], route.To[i]);
        }
    }

    private void CheckRoute(Point? from, Point to)
    {
        var group = rig.Group(to)!;
        if (before.IsRouted(to, out var same) && same == from)
            return;

        if (group.Kind is not (PortKind.Output or PortKind.Sink or PortKind.Transmit))
            Report($"{to} takes no route.");
        else if (from is null && group.IsRigid)
            Report($"{to} cannot be cleared: it always carries its own position.");
        else if (from is { } source && (!IsAllowed(source, to) || (group.FixedFrom is { } own && own.At(to.Number) != source)))
            Report($"{to} cannot take {source}: the device does not route that.");
    }

    // Where a device routes in blocks, a block of sinks takes a whole block of sources in order, or nothing.
    private void CheckBlockRoutes(bool untouched = false)
    {
        foreach (var device in rig.Devices)
        {
            foreach (var entry in device.Profile?.Routing ?? default)
            {
                if (
                    entry.Mode == RoutingMode.Block
                    && device.Group(entry.From) is { } from
                    && device.Group(entry.To) is { FixedFrom: null } to
                    && (untouched || Touched(to))
                )
                    CheckBlocks(entry, from, to);
            }
        }
    }

    /// <summary>True when every block that an input routes where devices route in blocks is a whole one.</summary>
    public static bool HasWholeBlocks(AssignmentFacts facts)
    {
        var check = new ResultCheck(facts, facts.Input, new PointRange?[facts.Demands.Count], []);
        check.CheckBlockRoutes(untouched: true);
        return check.problems.Count == 0;
    }

    private bool Touched(GroupFacts group) =>
        !group.Device.IsExcluded && Enumerable.Range(1, group.Count).Any(number => Nearest(before, group.At(number)) != Nearest(after, group.At(number)));

    private static Point? Nearest(PatchTrace trace, Point sink) => trace.Upstream(sink)?.From;

    private void CheckBlocks(RoutingEntry entry, GroupFacts from, GroupFacts to)
    {
        var size = entry.BlockSize ?? 1;
        int? offset = null;
        for (var start = 0; start < to.Count; start += size)
        {
            var sources = Enumerable.Range(start + 1, Math.Min(size, to.Count - start)).Select(number => Nearest(after, to.At(number))).ToList();
            if (!sources.Any(source => source?.Group == entry.From))
                continue;

            var name = $"{to.At(start + 1)} and the rest of its block of {size}";
            var first = sources[0] is { } point && point.Group == entry.From ? point.Number : 0;
            var isWhole =
                first > 0
                && (first - 1) % size == 0
                && Enumerable.Range(0, sources.Count).All(i => first + i > from.Count ? sources[i] is null : sources[i] == from.At(first + i));
            if (!isWhole)
                Report($"{name} must take one whole block of {from.Device.Model.Id}/{from.Model.Id} in order.");
            else if (!entry.Reordering && (offset ??= first - start) != first - start)
                Report($"{name} must keep the same distance to its sources as the other blocks.");
        }
    }
}
