using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets;

/// <summary>Marks what is not printed as it was in an older revision.</summary>
/// <remarks>
/// Rows are the same when they are about the same point, line or feed. What a row says is compared item by item, so that a mark tells only what was different.
/// </remarks>
internal sealed class SheetChanges
{
    private readonly Sheet before;
    private readonly List<SheetDifference> differences = [];

    private SheetChanges(Sheet before) => this.before = before;

    /// <param name="now">The sheet to mark.</param>
    /// <param name="before">The sheet of the older revision, of all devices.</param>
    /// <param name="isAll">True when the sheet to mark is of all devices, so that what it lacks is gone.</param>
    public static Sheet Mark(Sheet now, Sheet before, bool isAll) => new SheetChanges(before).Mark(now, isAll);

    private Sheet Mark(Sheet now, bool isAll)
    {
        var devices = now.Devices.Select(device => Mark(device, before.Devices.FirstOrDefault(other => other.Id == device.Id))).ToValueList();
        if (isAll)
        {
            Gone(before.Devices.Where(device => now.Devices.All(other => other.Id != device.Id)), device => device.Label, device => device.Type);
        }

        var checks = Rows(
            now.LineChecks,
            before.LineChecks,
            row => row.Line.Id.Value,
            SheetRowItems.Line,
            row => SheetRowItems.Place(row.Enters, row.Line.Name),
            (row, change) => row with { Change = change },
            isAll
        );
        var marked = new Dictionary<LineCheck, LineCheck>(ReferenceEqualityComparer.Instance);
        for (var i = 0; i < checks.Count; i++)
        {
            marked.Add(now.LineChecks[i], checks[i]);
        }

        return now with
        {
            Devices = devices,
            LineChecks = checks,
            Walk = now.Walk.Select(stop => stop with { Lines = stop.Lines.Select(row => marked[row]).ToValueList() }).ToValueList(),
            OutputChecks = Rows(
                now.OutputChecks,
                before.OutputChecks,
                row => row.Id.Value,
                SheetRowItems.Mix,
                row => row.Name,
                (row, change) => row with { Change = change },
                isAll
            ),
            Packs = Rows(now.Packs, before.Packs, row => row.Id.Value, SheetRowItems.Pack, null, (row, change) => row with { Change = change }, isAll),
            Kit = isAll ? Kit(now.Kit) : now.Kit,
            Powered = Rows(
                now.Powered,
                before.Powered,
                row => $"{row.Id} {row.Supply}",
                SheetRowItems.Powered,
                row => $"{row.Device} on a supply",
                (row, change) => row with { Change = change },
                isAll
            ),
            Networks = now
                .Networks.Select(network =>
                    network with
                    {
                        Streams = Rows(
                            network.Streams,
                            before.Networks.FirstOrDefault(other => other.Id == network.Id)?.Streams ?? [],
                            row => row.Id.Value,
                            row => [("", row.Label ?? ""), ("from", row.From), ("to", string.Join(", ", row.To))],
                            null,
                            (row, change) => row with { Change = change },
                            false
                        ),
                    }
                )
                .ToValueList(),
            Differences = differences.ToValueList(),
        };
    }

    private ValueList<SheetKitItem> Kit(ValueList<SheetKitItem> now) =>
        Rows(
            now,
            before.Kit,
            row => $"{row.Kind} {row.Name} {row.SuppliedBy}",
            SheetRowItems.Kit,
            row => row.Name,
            (row, change) => row with { Change = change },
            true
        );

    private DeviceSheet Mark(DeviceSheet device, DeviceSheet? old)
    {
        if (old is null)
        {
            differences.Add(
                new SheetDifference
                {
                    Kind = SheetChangeKind.New,
                    Subject = device.Label,
                    Now = device.Type,
                }
            );
            return device with { Change = new SheetChange { Kind = SheetChangeKind.New } };
        }

        var stand = Compare(
            [("", device.Label), ("", device.Type), ("at", device.Zone ?? "no zone")],
            [("", old.Label), ("", old.Type), ("at", old.Zone ?? "no zone")]
        );
        if (stand is not null)
        {
            differences.Add(
                new SheetDifference
                {
                    Kind = SheetChangeKind.Changed,
                    Subject = device.Label,
                    Was = stand.Was,
                    Now = $"{device.Type}, {device.Zone ?? "no zone"}",
                }
            );
        }

        return device with
        {
            Change = stand,
            Outputs = Tables(device.Outputs, old.Outputs, row => row.At, SheetRowItems.Output, true, (row, change) => row with { Change = change }),
            Inputs = Tables(device.Inputs, old.Inputs, row => row.At, SheetRowItems.Input, true, (row, change) => row with { Change = change }),
            Channels = Tables(device.Channels, old.Channels, row => row.At, SheetRowItems.Channel, true, (row, change) => row with { Change = change }),
            Buses = Tables(device.Buses, old.Buses, row => row.At, SheetRowItems.Bus, false, (row, change) => row with { Change = change }),
            Jacks = Rows(
                device.Jacks,
                old.Jacks,
                row => row.At.ToString(),
                SheetRowItems.Jack,
                row => row.At.ToString(),
                (row, change) => row with { Change = change },
                false
            ),
        };
    }

    private ValueList<SheetTable<TRow>> Tables<TRow>(
        ValueList<SheetTable<TRow>> now,
        ValueList<SheetTable<TRow>> old,
        Func<TRow, SheetPlace> at,
        Func<TRow, (string Item, string Text)[]> says,
        bool isListed,
        Func<TRow, SheetChange?, TRow> with
    ) =>
        now.Select(table =>
                table with
                {
                    Rows = Rows(
                        table.Rows,
                        old.FirstOrDefault(other => other.Group == table.Group)?.Rows ?? [],
                        row => SheetWords.Number(at(row).Number),
                        says,
                        isListed ? row => at(row).ToString() : null,
                        with,
                        false
                    ),
                }
            )
            .ToValueList();

    /// <param name="now">Rows of the sheet.</param>
    /// <param name="old">Rows of the older one.</param>
    /// <param name="key">What a row is about; rows of one key, such as the halves of a pair, are told apart by their order.</param>
    /// <param name="says">What a row says, item by item, always the same items.</param>
    /// <param name="subject">How the list of differences names a row; null for rows that another row stands for.</param>
    /// <param name="with">Puts a change into a row.</param>
    /// <param name="listsGone">True when rows that are no more belong into the list of differences.</param>
    private ValueList<TRow> Rows<TRow>(
        ValueList<TRow> now,
        ValueList<TRow> old,
        Func<TRow, string> key,
        Func<TRow, (string Item, string Text)[]> says,
        Func<TRow, string>? subject,
        Func<TRow, SheetChange?, TRow> with,
        bool listsGone
    )
    {
        var known = old.GroupBy(key, StringComparer.Ordinal).ToDictionary(group => group.Key, group => new Queue<TRow>(group), StringComparer.Ordinal);
        var rows = new List<TRow>(now.Count);
        foreach (var row in now)
        {
            var isKnown = known.TryGetValue(key(row), out var same) && same.Count > 0;
            var before = isKnown ? same!.Dequeue() : default;
            var change = isKnown ? Compare(says(row), says(before!)) : new SheetChange { Kind = SheetChangeKind.New };
            if (change is not null && subject is not null)
            {
                differences.Add(
                    new SheetDifference
                    {
                        Kind = change.Kind,
                        Subject = subject(row),
                        Was = change.Was,
                        Now = Words(says(row)),
                    }
                );
            }

            rows.Add(with(row, change));
        }

        if (listsGone && subject is not null)
        {
            Gone(old.Where(row => known[key(row)].Contains(row)), subject, row => Words(says(row)));
        }

        return rows.ToValueList();
    }

    private void Gone<TRow>(IEnumerable<TRow> rows, Func<TRow, string> subject, Func<TRow, string> was) =>
        differences.AddRange(
            rows.Select(row => new SheetDifference
            {
                Kind = SheetChangeKind.Gone,
                Subject = subject(row),
                Was = was(row),
            })
        );

    private static SheetChange? Compare((string Item, string Text)[] now, (string Item, string Text)[] old)
    {
        var was = new List<(string Item, string Text)>();
        for (var i = 0; i < now.Length; i++)
        {
            if (!string.Equals(now[i].Text, old[i].Text, StringComparison.Ordinal))
            {
                was.Add(
                    (
                        old[i].Item,
                        old[i].Text.Length > 0 ? old[i].Text
                        : old[i].Item.Length > 0 ? "none"
                        : "free"
                    )
                );
            }
        }

        return was.Count == 0 ? null : new SheetChange { Kind = SheetChangeKind.Changed, Was = Words(was) };
    }

    private static string Words(IEnumerable<(string Item, string Text)> items)
    {
        var text = string.Join("; ", items.Where(item => item.Text.Length > 0).Select(item => item.Item.Length > 0 ? $"{item.Item} {item.Text}" : item.Text));
        return text.Length > 0 ? text : "free";
    }
}
