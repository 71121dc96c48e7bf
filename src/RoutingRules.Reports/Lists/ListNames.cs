using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>Notes names in new and changed cells that the show does not have.</summary>
internal sealed class ListNames
{
    private readonly IntentList list;
    private readonly ListProblems notes;
    private readonly HashSet<string> devices;
    private readonly HashSet<string> zones;
    private readonly HashSet<string> feeds;
    private readonly ILookup<string, string> names;

    /// <param name="show">The show with the rows merged.</param>
    /// <param name="list">The list.</param>
    /// <param name="notes">Where notes go.</param>
    public ListNames(Show show, IntentList list, ListProblems notes)
    {
        this.list = list;
        this.notes = notes;
        devices = show.Rig.Devices.Select(device => device.Id.Value).ToHashSet(StringComparer.Ordinal);
        zones = show.Rig.Zones.Select(zone => zone.Id.Value).ToHashSet(StringComparer.Ordinal);
        feeds = show.Feeds.Select(feed => feed.Id.Value).ToHashSet(StringComparer.Ordinal);
        names = ListElements.Of(show, list).ToLookup(element => ListElements.NameOf(element) ?? "", ListElements.IdOf, StringComparer.Ordinal);
    }

    public void Check(IEnumerable<MergedRow> rows)
    {
        foreach (var entry in rows)
        {
            if (
                entry.Before is null
                && entry.Row.Find("id")?.Text.Length > 0
                && ListElements.NameOf(entry.After) is { Length: > 0 } name
                && names[name].FirstOrDefault(id => id != entry.Row.Id) is { } other
            )
            {
                notes.Add(
                    entry.Row.Line,
                    null,
                    $"the {ListElements.Word(list)} {entry.Row.Id} is new and has the name of {other}",
                    $"If {other} was meant, write its id."
                );
            }

            foreach (var member in entry.Members)
            {
                if (entry.After is Feed feed)
                {
                    Check(entry.Row, member, feed);
                }
                else
                {
                    Check(entry.Row, member, (Line)entry.After);
                }
            }
        }
    }

    private void Check(ListRow row, string member, Feed feed)
    {
        switch (member)
        {
            case "source":
                Device(row, member, feed.Source.Device);
                break;
            case "to":
                foreach (var place in feed.To)
                {
                    Places(row, member, place.At is { } at ? [at] : [], place.Devices, place.Zones);
                }

                break;
            case "separateFrom":
                feed.SeparateFrom.ToList().ForEach(entry => Note(row, member, "feed", entry.Feed.Value, feeds));
                break;
            case "backupOf" when feed.BackupOf is { } backup:
                Note(row, member, "feed", backup.Value, feeds);
                break;
        }
    }

    private void Check(ListRow row, string member, Line line)
    {
        if (member == "from")
        {
            Places(row, member, line.From.Source is { } source ? [source] : line.From.At, line.From.Devices, line.From.Zones);
        }
        else if (member == "to")
        {
            Places(row, member, line.To, default, default);
        }
    }

    private void Places(ListRow row, string member, ValueList<PointRange> points, ValueList<Id<Device>> anyOf, ValueList<Id<Zone>> within)
    {
        points.ToList().ForEach(range => Device(row, member, range.Device));
        anyOf.ToList().ForEach(device => Device(row, member, device));
        within.ToList().ForEach(zone => Note(row, member, "zone", zone.Value, zones));
    }

    private void Device(ListRow row, string member, Id<Device> device) => Note(row, member, "device", device.Value, devices);

    private void Note(ListRow row, string member, string what, string name, HashSet<string> known)
    {
        if (!known.Contains(name))
        {
            var meant = Spelling.Nearest(name, known.Order(StringComparer.Ordinal));
            var cell = row.Find(member);
            notes.Add(
                cell?.Line ?? row.Line,
                cell?.Header,
                $"the show has no {what} {name}{(meant is null ? "" : $"; did you mean {meant}?")}",
                $"Correct the cell, or add the {what}."
            );
        }
    }
}
