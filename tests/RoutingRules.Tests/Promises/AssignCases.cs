using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Assignment;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Promises;

/// <summary>Shows and options for promises about assignments.</summary>
internal static class AssignCases
{
    /// <summary>Default options with little search, so that many shows can be tried.</summary>
    public static AssignmentOptions Small { get; } = new() { Budget = 20_000 };

    /// <summary>Shows with options: spares, headroom, unlisted outputs kept, a device, link or point left out.</summary>
    public static Arbitrary<AssignCase> Any() =>
        Arb.From(
            from show in ShowArbitraries.ToAssign().Generator
            from spares in Gen.Frequency((4, Gen.Constant(0)), (1, Gen.Choose(1, 2)))
            from headroom in Gen.Frequency((6, Gen.Constant(0)), (1, Gen.Constant(1)))
            from keeps in Gen.Frequency((4, Gen.Constant(false)), (1, Gen.Constant(true)))
            from without in Gen.Frequency((4, Gen.Constant(-1)), (1, Gen.Choose(0, 1000)))
            select new AssignCase(show, Small with { Spares = spares, Headroom = headroom, KeepUnlisted = keeps, Without = Without(show, without) }),
            Shrink
        );

    /// <summary>
    /// Shows whose demands name boxes, consoles, amplifiers and racks by device or zone: no pins, which may ask for what cannot be, no processors on the
    /// way to a destination, no inserts on the way, no digital multicore, no routing in blocks, no lines born in a device, and nothing to do without.
    /// </summary>
    public static Arbitrary<AssignCase> Unpinned() =>
        Arb.From(Any().Generator.Select(Unpin), value => Any().Shrinker(value).Select(Unpin).Where(smaller => smaller != value));

    /// <summary>Those of <see cref="Unpinned"/> in which no two feeds share a bus, so that a patch says which feed an output serves.</summary>
    public static Arbitrary<AssignCase> OwnBuses() =>
        Arb.From(
            Unpinned().Generator.Select(value => value with { Show = WithOwnBuses(value.Show) }),
            value => Unpinned().Shrinker(value).Select(smaller => smaller with { Show = WithOwnBuses(smaller.Show) })
        );

    private static Show WithOwnBuses(Show show)
    {
        var used = new HashSet<Point>();
        return show with
        {
            Feeds =
            [
                .. show.Feeds.Where(feed =>
                    Enumerable.Range(0, feed.Source.Width).All(position => !used.Contains(feed.Source[position]))
                    && Enumerable.Range(0, feed.Source.Width).All(position => used.Add(feed.Source[position]))
                ),
            ],
        };
    }

    public static AssignmentResult Assign(Show show, AssignmentOptions options, CancellationToken cancellation = default) =>
        Promise.Engine.Assign(show, options, cancellation);

    /// <summary>What the independent verifier has against a result, or null.</summary>
    public static string? Verdict(Show input, AssignmentResult result, AssignmentOptions options)
    {
        var verified = AssignmentVerifier.Verify(
            input,
            result.Show,
            result.Placements,
            result.Unplaced,
            options,
            _ => null,
            [.. result.Contradictions.SelectMany(set => set)]
        );
        return !verified.IsValid ? $"The verifier says: {string.Join(" ", verified.Problems)}"
            : verified.Vector?.ToString() != result.Objective?.ToString() ? $"The verifier counts {verified.Vector}, the result says {result.Objective}."
            : null;
    }

    /// <summary>The demands of a show by the names that reports use.</summary>
    public static IEnumerable<string> Keys(Show show) =>
        show
            .Feeds.SelectMany(feed => Enumerable.Range(1, feed.To.Count).Select(entry => $"{feed.Id}/{entry}"))
            .Concat(show.Lines.Select(line => line.Id.Value));

    public static string Json(Show show) => System.Text.Encoding.UTF8.GetString(ShowWriter.ToUtf8(show));

    private static AssignCase Unpin(AssignCase value) => value with { Show = Unpin(value.Show), Options = value.Options with { Without = [] } };

    private static Show Unpin(Show show)
    {
        var passing = show.Rig.Devices.Where(device => IsPassing(show, device)).Select(device => device.Id).ToHashSet();
        return show with
        {
            Rig = show.Rig with
            {
                Cables = [.. show.Rig.Cables.Where(cable => !passing.Contains(cable.From.Device))],
                Networks = [show.Rig.Networks[0]],
                Links = [.. show.Rig.Links.Where(link => link.Network.Value == "audio")],
                Devices = [.. show.Rig.Devices.Select(device => passing.Contains(device.Id) ? device with { Zone = null } : device)],
                Profiles = [.. show.Rig.Profiles.Select(profile => profile with { Routing = [.. profile.Routing.Select(Freed)] })],
            },
            Feeds =
            [
                .. show
                    .Feeds.Where(feed => feed.Source.Group.Value != "insert-return")
                    .Select(feed => feed with { To = [.. feed.To.Select(Unpinned)], SeparateFrom = [], BackupOf = null }),
            ],
            Lines =
            [
                .. show
                    .Lines.Where(line => line.From.Source is null)
                    .Select(line => line.From.At.IsEmpty ? line : line with { From = new() { Devices = Named([.. line.From.At.Select(at => at.Device)]) } }),
            ],
            Patch = show.Patch with { Routes = [.. show.Patch.Routes.Where(route => route.To.Group.Value != "insert-send")] },
        };

        Destination Unpinned(Destination entry) =>
            entry with
            {
                At = null,
                Devices = Named([.. entry.Devices, .. entry.At is { } at ? [at.Device] : Array.Empty<Id<Device>>()]),
            };

        static RoutingEntry Freed(RoutingEntry entry) =>
            entry.Mode == RoutingMode.Block ? entry with { Mode = RoutingMode.Free, BlockSize = null, Reordering = false } : entry;

        ValueList<Id<Device>> Named(ValueList<Id<Device>> ids) => [.. ids.Select(id => passing.Contains(id) ? show.Rig.Devices[0].Id : id).Distinct()];
    }

    private static bool IsPassing(Show show, Device device) =>
        show.Rig.Profiles.First(profile => profile.Id == device.Profile) is { Through.IsEmpty: false } profile
        && profile.Kind != DeviceKind.Console
        && profile.Kind != DeviceKind.Amplifier;

    private static ValueList<string> Without(Show show, int choice)
    {
        string[] names =
        [
            .. show.Rig.Devices.Select(device => device.Id.Value),
            .. show.Rig.Links.Select(link => link.Id.Value),
            .. show.Rig.Cables.Select(cable => cable.From[0].ToString()),
        ];
        return choice < 0 ? [] : [names[choice % names.Length]];
    }

    private static IEnumerable<AssignCase> Shrink(AssignCase value) =>
        [
            .. value.Options == Small ? [] : new[] { value with { Options = Small } },
            .. ShowArbitraries
                .ToAssign()
                .Shrinker(value.Show)
                .Where(show => value.Options.Without.IsEmpty || IsNamed(show, value.Options.Without[0]))
                .Select(show => value with { Show = show }),
        ];

    private static bool IsNamed(Show show, string name) =>
        show.Rig.Devices.Any(device => device.Id.Value == name)
        || show.Rig.Links.Any(link => link.Id.Value == name)
        || show.Rig.Cables.Any(cable => cable.From[0].ToString() == name);
}
