using RoutingRules.Model;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>Slips at cables, links, clocks and settings.</summary>
internal static class RigFaults
{
    public static IEnumerable<Fault> All { get; } =
    [
        new("cable: gone", static (show, lot) => At(show.Rig.Cables, lot, static (_, _) => null) is { } cables ? Planting.Cables(show, cables) : null),
        new(
            "cable: in the wrong inputs of its device",
            static (show, lot) => At(show.Rig.Cables, lot, Moved) is { } cables ? Planting.Cables(show, cables) : null
        ),
        new("cable: two are exchanged", static (show, lot) => Exchange(show, lot)),
        new("cable: a pair is crossed", static (show, lot) => Cross(show, lot)),
        new("phantom: off where it is needed", static (show, lot) => Phantom(show, lot, true)),
        new("phantom: on where it is forbidden", static (show, lot) => Phantom(show, lot, false)),
        new(
            "gain: nobody owns it",
            static (show, lot) =>
                At(show.Patch.Inputs, lot, static (input, _) => input with { GainOwner = null }) is { } inputs
                    ? show with
                    {
                        Patch = show.Patch with { Inputs = inputs.ToValueList() },
                    }
                    : null
        ),
        new(
            "clock: another rate",
            static (show, lot) =>
                At(show.Rig.Clocks, lot, static (clock, _) => clock with { SampleRate = clock.SampleRate == 44_100 ? 48_000 : 44_100 }) is { } clocks
                    ? show with
                    {
                        Rig = show.Rig with { Clocks = clocks.ToValueList() },
                    }
                    : null
        ),
        new(
            "clock: no backup",
            static (show, lot) =>
                At(show.Rig.Clocks, lot, static (clock, _) => clock with { Backup = null }) is { } clocks
                    ? show with
                    {
                        Rig = show.Rig with { Clocks = clocks.ToValueList() },
                    }
                    : null
        ),
        new(
            "link: unplugged",
            static (show, lot) =>
                At(show.Rig.Links, lot, static (_, _) => null) is { } links ? show with { Rig = show.Rig with { Links = links.ToValueList() } } : null
        ),
        new(
            "link: too slow",
            static (show, lot) =>
                At(show.Rig.Links, lot, static (link, _) => link with { SpeedMbps = 10 }) is { } links
                    ? show with
                    {
                        Rig = show.Rig with { Links = links.ToValueList() },
                    }
                    : null
        ),
        new(
            "network: packet time",
            static (show, lot) =>
                At(show.Rig.Networks, lot, static (network, _) => network.PacketMicroseconds is null ? network : network with { PacketMicroseconds = 20_000 })
                    is { } networks
                    ? show with
                    {
                        Rig = show.Rig with { Networks = networks.ToValueList() },
                    }
                    : null
        ),
        new("label: two are exchanged", static (show, lot) => Labels(show, lot)),
        new(
            "show: nothing is patched",
            static (show, _) =>
                show.Patch.Streams.IsEmpty
                    ? null
                    : show with
                    {
                        Patch = show.Patch with { Streams = default, Routes = show.Patch.Routes.Where(route => route.From is null).ToValueList() },
                    }
        ),
    ];

    private static IEnumerable<T>? At<T>(ValueList<T> list, Lot lot, Func<T, Lot, T?> change)
        where T : class
    {
        if (list.IsEmpty)
        {
            return null;
        }

        var index = lot.Roll(0, list.Count - 1);
        var after = change(list[index], lot);
        return after is not null && after.Equals(list[index])
            ? null
            : [.. list.Take(index), .. after is null ? Array.Empty<T>() : [after], .. list.Skip(index + 1)];
    }

    private static Cable Moved(Cable cable, Lot lot)
    {
        var first = cable.To.First > cable.To.Width && lot.Chance(50) ? cable.To.First - cable.To.Width : cable.To.First + cable.To.Width;
        return cable with { To = new PointRange(cable.To.Device, cable.To.Group, first, first + cable.To.Width - 1) };
    }

    private static Show? Exchange(Show show, Lot lot)
    {
        var cables = show.Rig.Cables;
        var pairs = (
            from one in Enumerable.Range(0, cables.Count)
            from other in Enumerable.Range(0, cables.Count)
            where one < other && cables[one].To.Width == cables[other].To.Width
            select (one, other)
        ).ToList();
        if (pairs.Count == 0)
        {
            return null;
        }

        var (first, second) = lot.Pick(pairs);
        return Planting.Cables(
            show,
            cables.Select(
                (cable, i) =>
                    i == first ? cable with { To = cables[second].To }
                    : i == second ? cable with { To = cables[first].To }
                    : cable
            )
        );
    }

    private static Show? Cross(Show show, Lot lot)
    {
        var wide = show.Rig.Cables.Where(cable => cable.To.Width > 1).ToList();
        if (wide.Count == 0)
        {
            return null;
        }

        var cable = lot.Pick(wide);
        var at = lot.Roll(0, cable.To.Width - 2);
        var parts = Enumerable
            .Range(0, cable.To.Width)
            .Select(i =>
                cable with
                {
                    From = Planting.Part(cable.From, i, 1),
                    To = Planting.Part(
                        cable.To,
                        i == at ? at + 1
                            : i == at + 1 ? at
                            : i,
                        1
                    ),
                }
            );
        return Planting.Cables(show, show.Rig.Cables.SelectMany(one => one.Equals(cable) ? parts : [one]));
    }

    private static Show? Phantom(Show show, Lot lot, bool wasOn)
    {
        var inputs = show.Patch.Inputs;
        var fitting = Enumerable.Range(0, inputs.Count).Where(i => inputs[i].Phantom == wasOn).ToList();
        if (fitting.Count == 0)
        {
            return null;
        }

        var index = lot.Pick(fitting);
        return show with
        {
            Patch = show.Patch with { Inputs = inputs.Select((input, i) => i == index ? input with { Phantom = !wasOn } : input).ToValueList() },
        };
    }

    private static Show? Labels(Show show, Lot lot)
    {
        var labels = show.Patch.Labels;
        if (labels.Count < 2)
        {
            return null;
        }

        var one = lot.Roll(0, labels.Count - 1);
        var other = lot.Roll(0, labels.Count - 1);
        return labels[one].Text == labels[other].Text
            ? null
            : show with
            {
                Patch = show.Patch with
                {
                    Labels = labels
                        .Select(
                            (label, i) =>
                                i == one ? label with { Text = labels[other].Text }
                                : i == other ? label with { Text = labels[one].Text }
                                : label
                        )
                        .ToValueList(),
                },
            };
    }
}
