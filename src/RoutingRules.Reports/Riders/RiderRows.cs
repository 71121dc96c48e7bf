using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Reports.Riders;

/// <summary>Writes what a band asks for as rows of the lists of lines and feeds.</summary>
internal sealed class RiderRows(RiderRig rig, RiderOptions options, ListProblems questions, ListProblems notes, ListProblems problems)
{
    /// <summary>The lowest first channel from which all of the list has room; 0 for none.</summary>
    private int roomy;

    private readonly Dictionary<string, int> names = new(StringComparer.Ordinal);

    public List<ListRow> Lines(List<RiderInput> inputs)
    {
        var rows = new List<ListRow>();
        roomy = Enumerable.Range(1, 1024).FirstOrDefault(first => inputs.TrueForAll(input => HasRoom(input, first)));
        foreach (var input in inputs)
        {
            if (RiderWords.KindOf(input) is not var (kind, equipment))
            {
                questions.Add(input.Row, null, $"what is '{input.What}'?", "Write the microphone, DI or line in the column for it.");
                continue;
            }

            if (RiderWords.PhantomOf(input, kind) is not { } phantom)
            {
                questions.Add(input.Row, null, $"does '{input.What}' want phantom power or not? The list says '{input.Phantom}'.", "Write yes or no.");
                continue;
            }

            var name = Unique(input.Row, input.What);
            if (Channels(input, name) is not { } channels)
            {
                continue;
            }

            rows.Add(
                Row(
                    IntentList.Lines,
                    input.Row,
                    ("name", name),
                    ("kind", kind == LineKind.Line ? "line" : "microphone"),
                    ("phantom", phantom.ToString().ToLowerInvariant()),
                    ("width", input.Width.ToString(CultureInfo.InvariantCulture)),
                    ("from", string.Join(CellText.Or, rig.Boxes.Select(box => box.Id))),
                    ("to", channels),
                    ("equipment", equipment),
                    ("stand", input.Stand is "-" or "\u2013" ? "" : input.Stand),
                    ("position", input.Position),
                    ("notes", input.Remarks)
                )
            );
        }

        return rows;
    }

    public List<ListRow> Feeds(List<RiderMix> mixes)
    {
        var (rows, bus) = (new List<ListRow>(), options.FirstBus);
        foreach (var mix in mixes)
        {
            if (RiderWords.MixOf(mix) is not var (role, isStereo))
            {
                questions.Add(
                    mix.Row,
                    null,
                    $"has {mix.Who} a wedge or ears? The list says '{mix.System}'.",
                    "Write wedge, ears or stereo ears in the column for it."
                );
                continue;
            }

            var isEars = role == FeedRole.InEar;
            if (isEars && rig.Racks.Count == 0)
            {
                questions.Add(mix.Row, null, $"{mix.Who} wants ears, and the rig has no transmitter rack", "Add one to the rig, or agree on a wedge.");
                continue;
            }

            var name = Unique(mix.Row, $"{(isEars ? "Ears" : "Monitor")} {mix.Who}");
            if (Buses(mix, name, isStereo ? 2 : 1, ref bus) is not { } source)
            {
                continue;
            }

            rows.Add(
                Row(
                    IntentList.Feeds,
                    mix.Row,
                    ("name", name),
                    ("role", role.ToString()),
                    ("source", source),
                    ("to", string.Join(CellText.Or, (isEars ? rig.Racks : rig.Boxes).Select(device => device.Id))),
                    ("person", mix.Who),
                    ("position", mix.Position),
                    ("notes", mix.Remarks)
                )
            );
        }

        return rows;
    }

    private string Elsewhere =>
        roomy == 0
            ? "No first channel has room for all of the list; take another console."
            : string.Create(CultureInfo.InvariantCulture, $"Begin at another channel: --from-channel {roomy} has room for all of the list.");

    private bool HasRoom(RiderInput input, int from) =>
        rig.Consoles.All(console =>
            RiderRig.Channels(console) is { } channels
            && input.First + from + input.Width - 2 <= channels.Count
            && Enumerable.Range(input.First + from - 1, input.Width).All(number => rig.Holder(console, channels, number, input.What) is null)
        );

    /// <summary>Channels of all consoles by the band's numbers; null when one is not there or somebody else's.</summary>
    private string? Channels(RiderInput input, string name)
    {
        var first = input.First + options.FirstChannel - 1;
        var all = new List<string>();
        foreach (var console in rig.Consoles)
        {
            if (RiderRig.Channels(console) is not { } channels || first + input.Width - 1 > channels.Count)
            {
                problems.Add(input.Row, null, $"'{name}' would need channel {first + input.Width - 1} of {console.Id}, which it does not have", Elsewhere);
                return null;
            }

            for (var number = first; number < first + input.Width; number++)
            {
                if (rig.Holder(console, channels, number, name) is { } holder)
                {
                    problems.Add(input.Row, null, $"'{name}' would take channel {number} of {console.Id}, which '{holder}' has", Elsewhere);
                    return null;
                }
            }

            all.Add(new PointRange(console.Id, channels.Id, first, first + input.Width - 1).ToString());
        }

        return string.Join(CellText.Next, all);
    }

    /// <summary>The next free bus of the console, for a pair two that begin on an odd number.</summary>
    private string? Buses(RiderMix mix, string name, int width, ref int next)
    {
        var buses = rig.Buses;
        for (var first = next; buses is not null && first + width - 1 <= buses.Count; first++)
        {
            if ((width == 1 || first % 2 == 1) && Enumerable.Range(first, width).All(number => !rig.IsBusTaken(buses, number, name)))
            {
                next = first + width;
                return new PointRange(rig.MixConsole.Id, buses.Id, first, first + width - 1).ToString();
            }
        }

        problems.Add(
            mix.Row,
            null,
            $"{rig.MixConsole.Id} has no bus left for '{name}'",
            "Begin at a lower bus with --from-bus, or let another console mix with --mix-console."
        );
        return null;
    }

    private string Unique(int row, string name)
    {
        var count = names[name] = names.GetValueOrDefault(name) + 1;
        if (count == 1)
        {
            return name;
        }

        var told = string.Create(CultureInfo.InvariantCulture, $"{name} {count}");
        notes.Add(row, null, $"the list has '{name}' {count} times; this one is called '{told}'", "Give each a name of its own in the list.");
        return told;
    }

    private static ListRow Row(IntentList list, int line, params (string Member, string Text)[] cells)
    {
        var members = ListMember.Of(list);
        return new ListRow(
            line,
            [
                .. cells
                    .Where(cell => cell.Text.Length > 0)
                    .Select(cell => new ListCell(Array.Find(members, member => member.Name == cell.Member)!, cell.Member, cell.Text, line)),
            ],
            default
        );
    }
}
