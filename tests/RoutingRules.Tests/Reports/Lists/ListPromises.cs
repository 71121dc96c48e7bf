using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Configuration;
using RoutingRules.Documents;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Reports.Lists;

/// <summary>Promise 2 and 8 for lists: what goes out comes back, and nothing else is touched.</summary>
[Trait("Speed", "slow")]
public sealed class ListPromises
{
    private const int Cases = 300;

    [Property(MaxTest = Cases)]
    public Property A_list_that_comes_back_changes_nothing() =>
        Promise.Of(
            Named(),
            show =>
            {
                foreach (var list in Enum.GetValues<IntentList>())
                {
                    foreach (var separator in Enum.GetValues<ListSeparator>())
                    {
                        var config = new ListsConfig { Separator = separator };
                        var result = ListImport.Read(show, Utf8(ListExport.Write(show, list, config)), list, new ListImportOptions { RemovesAbsent = true });
                        var count = list == IntentList.Feeds ? show.Feeds.Count : show.Lines.Count;
                        if (
                            !result.Problems.IsEmpty
                            || !result.Edits.IsEmpty
                            || !show.Equals(result.Show)
                            || result.Same.Count != count
                            || !result.Removed.IsEmpty
                        )
                        {
                            return $"{list} by {separator}: {First(result)} {result.Edits.Count} edits, {result.Same.Count} the same.";
                        }
                    }
                }

                return null;
            }
        );

    [Property(MaxTest = Cases)]
    public Property What_was_taken_out_comes_back_as_it_was_and_where_it_was() =>
        Promise.Of(
            Named(),
            full =>
            {
                var show = Sayable(full);
                for (var keep = 0; keep < 4; keep++)
                {
                    // None, every second, every third but the first, all but the first.
                    bool Stays(int index) =>
                        keep switch
                        {
                            0 => false,
                            1 => index % 2 == 0,
                            2 => index % 3 == 1,
                            _ => index > 0,
                        };
                    var less = show with
                    {
                        Feeds = show.Feeds.Where((_, index) => Stays(index)).ToValueList(),
                        Lines = show.Lines.Where((_, index) => Stays(index)).ToValueList(),
                    };
                    var feeds = ListImport.Read(less, Utf8(ListExport.Write(show, IntentList.Feeds)), IntentList.Feeds);
                    var both = feeds.Show is null ? feeds : ListImport.Read(feeds.Show, Utf8(ListExport.Write(show, IntentList.Lines)), IntentList.Lines);
                    if (!show.Equals(both.Show))
                    {
                        return $"With {keep}: another show comes back. {First(both)}";
                    }
                }

                return null;
            }
        );

    [Property(MaxTest = Cases)]
    public Property One_column_changes_one_member_and_keeps_the_rest_of_the_text() =>
        Promise.Of(
            Named(),
            show =>
            {
                var text = new StringBuilder("NAME;Id\n");
                for (var i = show.Feeds.Count - 1; i >= 0; i--)
                {
                    text.Append($"Mix {i};{show.Feeds[i].Id}\n");
                }

                var result = ListImport.Read(show, Utf8(text.ToString()), IntentList.Feeds);
                var wanted = show with { Feeds = show.Feeds.Select((feed, i) => feed with { Name = $"Mix {i}" }).ToValueList() };
                if (!wanted.Equals(result.Show))
                {
                    return $"Another show: {First(result)}";
                }

                var before = ShowWriter.ToUtf8(show);
                var edited = ShowText.Edit(before, result.Edits, result.Show!);
                return edited.IsRewritten ? "The text was written anew."
                    : !wanted.Equals(ShowReader.Read(edited.Utf8.Span).Value) ? "The text says something else."
                    : result.Changed.Any(change => change.Members is not ["name"]) ? "More than a name is said to have changed."
                    : null;
            }
        );

    [Property(MaxTest = Cases)]
    public Property Formulas_go_out_harmless_and_come_back() =>
        Prop.ForAll(
            Gen.Elements("=", "+", "-", "@", "'", "\uff1d", "\"", ",", "1", "a").ArrayOf(5).Select(string.Concat).ToArbitrary(),
            name =>
            {
                var show = new Show
                {
                    Title = "Formulas",
                    Rig = new Rig(),
                    Lines =
                    [
                        new Line
                        {
                            Id = new("a"),
                            Name = name,
                            Kind = LineKind.Line,
                            From = new LineOrigin { Devices = [new("box")] },
                            To = [PointRange.Parse("desk/channel/1")],
                        },
                    ],
                };
                var text = ListExport.Write(show, IntentList.Lines);
                var result = ListImport.Read(show with { Lines = [] }, Utf8(text), IntentList.Lines);
                return result.Show!.Lines.Equals(show.Lines)
                    && !"=+-@\uff1d".Contains(CsvReader.Read(text, ',', new ListProblems(1))[1].Cells[1].Text.FirstOrDefault('x'), StringComparison.Ordinal);
            }
        );

    [Property(MaxTest = Cases)]
    public Property Any_bytes_give_problems_or_a_show_that_can_be_written() =>
        Prop.ForAll(
            Mutations(),
            mutation =>
            {
                var result = ListImport.Read(mutation.Show, mutation.Utf8, IntentList.Feeds);
                return (result.Show is null) != result.Problems.IsEmpty
                    && (result.Show is null ? result.Edits.IsEmpty : result.Show.Equals(ShowReader.Read(ShowWriter.ToUtf8(result.Show)).Value));
            }
        );

    /// <summary>Anything the format can say, with ids that differ within each list.</summary>
    private static Arbitrary<Show> Named() =>
        Arb.From(
            ModelArbitraries
                .Shows()
                .Generator.Select(show =>
                    show with
                    {
                        Feeds = show.Feeds.Select((feed, index) => feed with { Id = new($"{feed.Id.Value[..1]}-{index}") }).ToValueList(),
                        Lines = show.Lines.Select((line, index) => line with { Id = new($"{line.Id.Value[..1]}-{index}") }).ToValueList(),
                    }
                )
        );

    /// <summary>The show without what lists do not carry: content of other tools, and the difference between an empty text and none.</summary>
    private static Show Sayable(Show show) =>
        show with
        {
            Feeds = show
                .Feeds.Select(feed =>
                    feed with
                    {
                        Name = Filled(feed.Name),
                        Person = Filled(feed.Person),
                        Override = Filled(feed.Override),
                        Pack = Filled(feed.Pack),
                        Position = Filled(feed.Position),
                        Notes = Filled(feed.Notes),
                        To = feed.To.Select(place => place with { Extensions = null }).ToValueList(),
                        SeparateFrom = feed.SeparateFrom.Select(entry => entry with { Extensions = null }).ToValueList(),
                        Extensions = null,
                    }
                )
                .ToValueList(),
            Lines = show
                .Lines.Select(line =>
                    line with
                    {
                        Name = Filled(line.Name),
                        From = line.From with { Extensions = null },
                        Equipment = Filled(line.Equipment),
                        Stand = Filled(line.Stand),
                        Position = Filled(line.Position),
                        SuppliedBy = Filled(line.SuppliedBy),
                        Notes = Filled(line.Notes),
                        Extensions = null,
                    }
                )
                .ToValueList(),
        };

    private static string First(ListImportResult result) => result.Problems.IsEmpty ? "" : result.Problems[0].ToString();

    private static string? Filled(string? text) => text is "" ? null : text;

    private static Arbitrary<Mutation> Mutations() =>
        Arb.From(
            from show in Named().Generator
            from places in Gen.Choose(0, int.MaxValue - 1).ArrayOf(3)
            from values in Gen.Choose(0, 255).ArrayOf(3)
            select new Mutation(show, Change(Utf8(ListExport.Write(show, IntentList.Feeds)), places, values))
        );

    private static byte[] Change(byte[] text, int[] places, int[] values)
    {
        foreach (var (place, value) in places.Zip(values))
        {
            text[place % text.Length] = value < 128 ? (byte)value : (byte)",;\"\n =x1"[value % 8];
        }

        return text;
    }

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);

    private sealed record Mutation(Show Show, byte[] Utf8);
}
