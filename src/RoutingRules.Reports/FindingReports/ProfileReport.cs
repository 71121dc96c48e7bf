using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Profiles;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes device profiles, for people.</summary>
/// <remarks>Lines end with LF; the same profiles give the same text. Characters that could steer a terminal are written out.</remarks>
public static class ProfileReport
{
    /// <summary>One line for each profile, in the order given: id, kind, name.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void WriteList(IEnumerable<DeviceProfile> profiles, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(profiles);
        ArgumentNullException.ThrowIfNull(output);
        var table = new TextColumns();
        foreach (var profile in profiles)
        {
            table.Add(profile.Id.Value, profile.Kind.ToString(), PlainText.Show(profile.Name));
        }

        table.WriteTo(output, "");
    }

    /// <summary>Port groups, routing, paths, factory routes and limits of a profile as tables.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(DeviceProfile profile, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(output);
        output.Write(Format($"{profile.Id}, version {profile.Version}: {PlainText.Show(profile.Name)} ({profile.Kind})\n"));
        var groups = new TextColumns();
        groups.Add("group", "what it is", "count", "blocks of", "level", "connector", "remarks");
        foreach (var group in profile.PortGroups)
        {
            groups.Add(
                group.Id.Value,
                Kind(group.Kind),
                Count(group),
                group.BlockSize is { } size ? Format($"{size}") : "",
                group.Level?.ToString() ?? "",
                group.Connector?.ToString() ?? "",
                Remarks(group, profile)
            );
        }

        Section(output, "Port groups", groups);
        Section(output, "What can be routed to what", Routing(profile));
        Section(output, "Paths through the device", Through(profile));
        Section(output, "Routes from the factory", Factory(profile));
        Section(output, "Limits", Limits(profile));
        if (profile.Notes is { } notes)
        {
            output.Write($"\nNotes\n  {PlainText.Show(notes)}\n");
        }
    }

    private static void Section(TextWriter output, string title, TextColumns table)
    {
        if (table.HasRows)
        {
            output.Write($"\n{title}\n");
            table.WriteTo(output, "  ");
        }
    }

    private static TextColumns Routing(DeviceProfile profile)
    {
        var table = new TextColumns();
        foreach (var entry in profile.Routing)
        {
            table.Add(
                $"{entry.From} to {entry.To}",
                entry.Mode switch
                {
                    RoutingMode.Free => "free: any to any",
                    RoutingMode.Block => Format(
                        $"in blocks of {entry.BlockSize ?? 1}{(entry.Reordering ? ", each with its own offset" : ", all with one offset")}"
                    ),
                    _ => entry.Clearable ? "fixed one to one, can be switched off" : "fixed one to one",
                }
            );
        }

        return table;
    }

    private static TextColumns Through(DeviceProfile profile)
    {
        var table = new TextColumns();
        foreach (var entry in profile.Through)
        {
            var kind = entry.Kind switch
            {
                ThroughKind.Process => "processing",
                ThroughKind.Passive => entry.Phantom ? "passive, phantom power passes" : "passive",
                _ => "selector",
            };
            table.Add($"{entry.From} to {entry.To}", entry.LatencyMilliseconds is { } latency ? Format($"{kind}, {latency:0.###} ms") : kind);
        }

        return table;
    }

    private static TextColumns Factory(DeviceProfile profile)
    {
        var table = new TextColumns();
        foreach (var route in profile.FactoryRoutes)
        {
            table.Add($"{route.From} to {route.To}");
        }

        return table;
    }

    private static TextColumns Limits(DeviceProfile profile)
    {
        var table = new TextColumns();
        Add("streams sent", profile.Limits?.StreamsSent);
        Add("streams received", profile.Limits?.StreamsReceived);
        Add("network hops", profile.Limits?.Hops);
        Add("characters of a label", profile.Limits?.LabelLength);
        if (!profile.SampleRates.IsEmpty)
        {
            table.Add("sample rates", Format($"{string.Join(", ", profile.SampleRates)} Hz"));
        }

        return table;

        void Add(string what, int? limit)
        {
            if (limit is { } number)
            {
                table.Add(what, Format($"{number}"));
            }
        }
    }

    private static string Count(PortGroup group) =>
        group.Count is { } count ? Format($"{count}") : string.Join(", ", group.CountByRate.Select(entry => Format($"{entry.Count} at {entry.SampleRate} Hz")));

    private static string Remarks(PortGroup group, DeviceProfile profile)
    {
        var remarks = new List<string>();
        AddIf(group.Phantom, "phantom power");
        AddIf(group.Isolated, "isolated");
        AddIf(group.Paired, "in pairs");
        AddIf(group.InEar, "heard in somebody's ears");
        AddIf(group.ChannelsPerConnector > 1, Format($"{group.ChannelsPerConnector} channels on a connector"));
        AddIf(group.RateConverter, "sample rate converter");
        AddIf(group.Carrier is not null, $"on jack {group.Carrier}");
        AddIf(!group.Bridged.IsEmpty, $"switched together: {string.Join(", ", group.Bridged.Select(jacks => jacks.Jacks.ToString()))}");
        AddIf(group.LabelLength is not null, Format($"labels of {group.LabelLength} characters"));
        foreach (var latency in profile.LatencyMilliseconds)
        {
            AddIf(latency.Group == group.Id, Format($"{latency.Value:0.###} ms"));
        }

        return string.Join(", ", remarks);

        void AddIf(bool condition, string remark)
        {
            if (condition)
            {
                remarks.Add(remark);
            }
        }
    }

    private static string Kind(PortKind kind) =>
        kind switch
        {
            PortKind.Source => "internal source",
            PortKind.Sink => "internal sink",
            PortKind.Input => "input",
            PortKind.Output => "output",
            PortKind.Transmit => "slots to the network",
            PortKind.Receive => "slots from the network",
            _ => "network jack",
        };

    private static string Format(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
