using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>
/// Smaller shows: an entry of a list less, a device less, a smaller profile. Valid ones stay valid: what named the missing part goes with it.
/// </summary>
internal static class ShowShrinker
{
    public static IEnumerable<Show> Valid(Show show) => Candidates(show).Select(ShowTidier.Tidy).Where(smaller => smaller != show);

    /// <summary>Smaller shows whose mistakes stay as they are.</summary>
    public static IEnumerable<Show> Messy(Show show) => Candidates(show);

    public static IEnumerable<Rig> Rigs(Rig rig) => Rig(rig).Select(ShowTidier.Tidy).Where(smaller => smaller != rig);

    private static IEnumerable<Show> Candidates(Show show)
    {
        var patch = show.Patch;
        if (patch != new Patch())
        {
            yield return show with
            {
                Patch = new(),
            };
        }

        foreach (var rig in Rig(show.Rig))
        {
            yield return show with
            {
                Rig = rig,
            };
        }

        foreach (var feeds in Lists(show.Feeds, Feed))
        {
            yield return show with
            {
                Feeds = feeds,
            };
        }

        foreach (var lines in Lists(show.Lines, line => Lists(line.To).Where(to => !to.IsEmpty).Select(to => line with { To = to })))
        {
            yield return show with
            {
                Lines = lines,
            };
        }

        foreach (var streams in Lists(patch.Streams, stream => Lists(stream.To).Select(to => stream with { To = to })))
        {
            yield return show with
            {
                Patch = patch with { Streams = streams },
            };
        }

        foreach (var routes in Lists(patch.Routes))
        {
            yield return show with
            {
                Patch = patch with { Routes = routes },
            };
        }

        foreach (var labels in Lists(patch.Labels))
        {
            yield return show with
            {
                Patch = patch with { Labels = labels },
            };
        }

        foreach (var inputs in Lists(patch.Inputs))
        {
            yield return show with
            {
                Patch = patch with { Inputs = inputs },
            };
        }

        if (show.Extensions is not null || patch.Extensions is not null)
        {
            yield return show with
            {
                Extensions = null,
                Patch = patch with { Extensions = null },
            };
        }
    }

    private static IEnumerable<Rig> Rig(Rig rig) =>
        [
            .. Lists(rig.Devices, Device).Where(devices => !devices.IsEmpty).Select(devices => rig with { Devices = devices }),
            .. Lists(rig.Cables).Select(cables => rig with { Cables = cables }),
            .. Lists(rig.Links).Select(links => rig with { Links = links }),
            .. Lists(rig.Zones).Select(zones => rig with { Zones = zones }),
            .. Lists(rig.Clocks).Select(clocks => rig with { Clocks = clocks }),
            .. Lists(rig.Unavailable).Select(marks => rig with { Unavailable = marks }),
            .. Lists(rig.Reserved).Select(marks => rig with { Reserved = marks }),
            .. Lists(rig.Profiles, ProfileShrinker.Shrink)
                .Where(profiles => profiles.Count == rig.Profiles.Count)
                .Select(profiles => rig with { Profiles = profiles }),
            .. rig.Extensions is null ? Array.Empty<Rig>() : [rig with { Extensions = null }],
        ];

    private static IEnumerable<Device> Device(Device device) => device.Label is null && device.Power.IsEmpty ? [] : [device with { Label = null, Power = [] }];

    private static IEnumerable<Feed> Feed(Feed feed)
    {
        foreach (var to in Lists(feed.To).Where(to => !to.IsEmpty))
        {
            yield return feed with
            {
                To = to,
            };
        }

        Feed[] simpler =
        [
            feed with
            {
                SeparateFrom = [],
                BackupOf = null,
            },
            feed with
            {
                Set = null,
                Part = null,
            },
            feed with
            {
                Group = null,
            },
            feed with
            {
                Preferred = null,
            },
            feed with
            {
                Spread = false,
            },
            feed with
            {
                Hold = null,
            },
            feed with
            {
                Priority = Priority.Normal,
            },
            feed with
            {
                Name = null,
            },
        ];
        foreach (var one in simpler)
        {
            if (one != feed)
            {
                yield return one;
            }
        }
    }

    /// <summary>The list without its first or second half, without each entry, and with each entry made smaller.</summary>
    private static IEnumerable<ValueList<T>> Lists<T>(ValueList<T> list, Func<T, IEnumerable<T>>? smaller = null)
    {
        if (list.Count > 3)
        {
            yield return [.. list.AsSpan()[..(list.Count / 2)]];
            yield return [.. list.AsSpan()[(list.Count / 2)..]];
        }

        for (var i = 0; i < list.Count; i++)
        {
            yield return ProfileShrinker.Without(list, i);
        }

        for (var i = 0; smaller is not null && i < list.Count; i++)
        {
            foreach (var item in smaller(list[i]))
            {
                yield return [.. list.AsSpan()[..i], item, .. list.AsSpan()[(i + 1)..]];
            }
        }
    }
}
