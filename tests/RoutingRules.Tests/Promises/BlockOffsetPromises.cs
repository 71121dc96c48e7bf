using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promise 3: stream channel c is slot first + c - 1, and a receiver a..b that takes channels from x on has channel x + k at slot a + k.</summary>
[Trait("Speed", "slow")]
public sealed class BlockOffsetPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property Streams_of_valid_patches_keep_their_offsets() => Promise.Of(ShowArbitraries.Valid(), OffsetProblem);

    [Property(MaxTest = Promise.Cases)]
    public Property Streams_of_assigned_patches_keep_their_offsets_stand_on_the_grid_and_never_overlap() =>
        Promise.Of(
            ShowArbitraries.ToAssign(),
            show =>
            {
                var result = AssignCases.Assign(show, AssignCases.Small).Show;
                return OffsetProblem(result) ?? GridProblem(result);
            }
        );

    /// <summary>Gives each sender a source of its own in every slot and looks where each arrives.</summary>
    private static string? OffsetProblem(Show show)
    {
        var planted = Plant(show);
        var graph = Promise.Resolve(planted).Graph;
        foreach (var stream in show.Patch.Streams)
        {
            foreach (var receiver in stream.To)
            {
                for (var k = 0; k < receiver.At.Width; k++)
                {
                    var channel = (receiver.Channels?.First ?? 1) + k;
                    var expected = new Point(stream.From.Device, new($"planted-{stream.From.Group}"), stream.From.First + channel - 1);
                    var carried = graph.Origin(graph.Find(receiver.At[k]));
                    if (carried.IsNone || graph.Address(carried) != expected)
                    {
                        return $"{receiver.At[k]} should carry channel {channel} of {stream.Id}, planted as {expected}, but carries "
                            + $"{(carried.IsNone ? "nothing" : graph.Address(carried).ToString())}.";
                    }
                }
            }
        }

        return null;
    }

    private static Show Plant(Show show)
    {
        var senders = show.Rig.Profiles.Select(profile =>
            profile with
            {
                PortGroups =
                [
                    .. profile.PortGroups.AsSpan(),
                    .. profile
                        .PortGroups.Where(IsNetworkTransmit)
                        .Select(group => group with { Id = Planted(group.Id), Kind = PortKind.Source, BlockSize = null }),
                ],
                Routing =
                [
                    .. profile.Routing.Where(entry => !profile.PortGroups.Any(group => group.Id == entry.To && IsNetworkTransmit(group))),
                    .. profile
                        .PortGroups.Where(IsNetworkTransmit)
                        .Select(group => SmallProfiles.Entry(Planted(group.Id).Value, group.Id.Value, RoutingMode.Fixed)),
                ],
                FactoryRoutes =
                [
                    .. profile.FactoryRoutes.Where(route => !profile.PortGroups.Any(group => group.Id == route.To.Group && IsNetworkTransmit(group))),
                ],
            }
        );
        return show with { Rig = show.Rig with { Profiles = [.. senders] } };
    }

    private static bool IsNetworkTransmit(PortGroup group) => group.Kind == PortKind.Transmit && group.Carrier is null;

    private static Id<PortGroup> Planted(Id<PortGroup> group) => new($"planted-{group}");

    private static string? GridProblem(Show show)
    {
        var received = new HashSet<Point>();
        var sent = new HashSet<Point>();
        foreach (var stream in show.Patch.Streams)
        {
            if (BlockProblem(show, stream.From, 1) is { } problem)
            {
                return $"Stream {stream.Id} sends {problem}";
            }

            for (var slot = 0; slot < stream.From.Width; slot++)
            {
                if (!sent.Add(stream.From[slot]))
                {
                    return $"Slot {stream.From[slot]} is sent twice.";
                }
            }

            foreach (var receiver in stream.To)
            {
                if (BlockProblem(show, receiver.At, receiver.At.Width / SizeOf(show, receiver.At)) is { } other)
                {
                    return $"Stream {stream.Id} is received at {other}";
                }

                if (receiver.Channels is { } channels && (channels.First - 1) % SizeOf(show, receiver.At) != 0)
                {
                    return $"Stream {stream.Id} is received from channel {channels.First} on, which is no start of a block of {SizeOf(show, receiver.At)}.";
                }

                for (var slot = 0; slot < receiver.At.Width; slot++)
                {
                    if (!received.Add(receiver.At[slot]))
                    {
                        return $"Slot {receiver.At[slot]} is received twice.";
                    }
                }
            }
        }

        return null;
    }

    /// <summary>Block b covers slots (b - 1) · size + 1 to b · size, and slots beyond the last whole block belong to none.</summary>
    private static string? BlockProblem(Show show, PointRange run, int blocks)
    {
        var size = SizeOf(show, run);
        var count = new NaiveTracer(show).Points().Count(point => point.Device == run.Device && point.Group == run.Group);
        return blocks >= 1 && run.Width == blocks * size && (run.First - 1) % size == 0 && run.Last <= count / size * size
            ? null
            : $"{run}, which is not {blocks} whole blocks of {size} of {count} slots.";
    }

    private static int SizeOf(Show show, PointRange run)
    {
        var profile = show.Rig.Profiles.First(candidate => candidate.Id == show.Rig.Devices.First(device => device.Id == run.Device).Profile);
        return profile.PortGroups.First(group => group.Id == run.Group).BlockSize ?? 1;
    }
}
