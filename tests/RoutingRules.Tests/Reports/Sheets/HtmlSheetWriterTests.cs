using System.Xml.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class HtmlSheetWriterTests
{
    private static readonly XDocument Page = Parse(SheetShow.Full);

    [Fact]
    public void Each_section_carries_show_venue_date_revision_code_and_title()
    {
        var sections = Sections(Page);
        var titles = sections.Select(section => section.Descendants("h2").Single().Value);
        var code = SheetShow.Build(SheetShow.Full).Head.Code;

        Assert.Equal(
            [
                "Overview",
                "Signal flow",
                "Input list",
                "Output list",
                "Desk desk",
                "SR box box-r",
                "SL box box-l",
                "Streams and jacks",
                "Line check by channel",
                "Line check by walk",
                "Output check",
                "Packs and people",
                "Network net",
                "Latency",
            ],
            titles
        );
        Assert.All(
            sections,
            section =>
            {
                Assert.Equal("Harbour night", Class(section, "show").Single().Value);
                Assert.Equal($"Salt Shed \u00b7 2027-06-12 \u00b7 revision C \u00b7 house view", Class(section, "meta").Single().Value);
                Assert.Equal(code, Class(section, "code").Single().Element("b")!.Value);
            }
        );
    }

    /// <remarks>A browser repeats the head of a table on each sheet of paper: that of the page, and that of the table that goes on.</remarks>
    [Fact]
    public void The_head_of_a_page_and_of_each_table_is_one_that_paper_repeats()
    {
        Assert.All(
            Sections(Page),
            section =>
            {
                var page = Assert.Single(section.Elements());
                Assert.Equal("page", (string?)page.Attribute("class"));
                Assert.Single(page.Element("thead")!.Descendants("header"));
                Assert.Single(page.Element("tbody")!.Elements());
            }
        );
        Assert.All(Tables(Page), table => Assert.True(table.Element("thead")!.Elements().Count() == 2, table.Value));
    }

    // The words that must be there are those of the project's safety texts; the WHO figure is that of its 2022 venue standard, public information page.
    [Theory]
    [InlineData("Mute or turn down amplifiers before you change patch, clock or phantom power")]
    [InlineData("In-ear mixes come first, and limited")]
    [InlineData("one output at a time, from low level")]
    [InlineData("100 dB LAeq over 15 minutes")]
    [InlineData("Local rules apply")]
    [InlineData("Rigging, mains power and earthing belong to licensed people under local codes")]
    [InlineData("what the document says, not what the room does")]
    public void The_first_page_and_the_first_of_the_devices_carry_every_caution(string caution)
    {
        var sections = Sections(Page);
        var device = Array.FindIndex(sections, section => section.Descendants("h2").Single().Value.Contains("desk", StringComparison.Ordinal));

        Assert.Equal(14, sections.Length);
        Assert.All(new[] { sections[0], sections[device] }, section => Assert.Contains(caution, Cautions(section), StringComparison.Ordinal));
    }

    [Fact]
    public void Every_section_says_what_nobody_may_forget()
    {
        Assert.All(Sections(Page), section => Assert.StartsWith("Mute ", Cautions(section), StringComparison.Ordinal));
        Assert.All(Sections(Page), section => Assert.Contains("a technician", Cautions(section), StringComparison.Ordinal));
    }

    [Fact]
    public void Short_sections_share_paper_and_say_whose_they_are()
    {
        var shared = Sections(Page).Where(section => (string?)section.Attribute("class") == "short").ToArray();

        Assert.NotEmpty(shared);

        // Two rows stand side by side, so twenty of them are a third of a sheet.
        Assert.All(shared, section => Assert.True(section.Descendants("tbody").Skip(1).Sum(body => body.Elements("tr").Count()) < 20, section.Value));
    }

    private static string Cautions(XElement section)
    {
        var box = Class(section, "cautions").Single();
        return box.Element("p")?.Value ?? string.Concat(box.Element("ul")!.Elements("li").Select(line => line.Value));
    }

    [Fact]
    public void What_is_not_patched_is_the_first_table_of_the_first_section()
    {
        var table = Tables(Page)[0];

        Assert.Equal("Not patched yet", Class(table, "name").Single().Value);
        Assert.Equal(
            ["Wedge", "Voice"],
            table.Descendants("th").Where(cell => cell.Attribute("scope")!.Value == "row").Select(cell => cell.Descendants("b").Single().Value)
        );
    }

    [Fact]
    public void A_dead_point_is_framed_with_its_reason() =>
        Assert.Equal(
            ["DEAD: crackles", "RESERVED: guest desk"],
            Sections(Page)
                .Where(section => section.Descendants("h2").Single().Value.Contains("box-", StringComparison.Ordinal))
                .Descendants("span")
                .Where(span => (string?)span.Attribute("class") == "mark dead" && char.IsUpper(span.Value[1]))
                .Select(span => span.Value)
                .Where(text => text.Contains(':', StringComparison.Ordinal))
        );

    [Fact]
    public void Phantom_that_must_be_off_stops_the_eye() =>
        Assert.Contains(Class(Page.Root!, "mark dead"), mark => mark.Value == "48\u00a0V\u00a0ON, must be OFF");

    [Fact]
    public void A_fan_out_shows_every_place_in_one_row()
    {
        var row = Page.Descendants("tr")
            .Single(row =>
                row.Elements("td").Any(cell => cell.Descendants("b").Any(name => name.Value == "Subs"))
                && row.Ancestors("table").First().Element("thead")!.Value.Contains("Buses", StringComparison.Ordinal)
            );

        Assert.EndsWith("to SR box output 3 \u00b7 SL box output 3", row.Elements("td").Single().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_check_has_one_box_for_each_console_that_receives_the_line()
    {
        var table = Assert.Single(Tables(Sections(Page)[8]));
        var boxes = table.Element("tbody")!.Elements("tr").Select(row => Class(row, "box").Length);

        // Five lines, of which one has no input; then the heading and three rows for late extras.
        Assert.Equal([1, 1, 1, 0, 1, 0, 0, 0, 0], boxes);
    }

    [Fact]
    public void It_is_one_file_without_scripts_or_anything_from_elsewhere()
    {
        var names = Page.Descendants().Select(element => element.Name.LocalName).Distinct();
        var attributes = Page.Descendants().Attributes().Select(attribute => attribute.Name.LocalName).Distinct().Order(StringComparer.Ordinal);

        Assert.DoesNotContain(names, name => name is "script" or "link" or "img" or "image" or "use" or "iframe" or "object" or "foreignObject");
        Assert.DoesNotContain(attributes, name => name is "href" or "src" or "id" || name.StartsWith("on", StringComparison.Ordinal));
        Assert.DoesNotContain("url(", Class(Page.Root!, null).Single(element => element.Name == "style").Value, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"quotes\" 'and' & ampersands &amp;")]
    [InlineData("\u05d1\u05e1 \u202egnorw\u202c \u0645")]
    [InlineData("]]> --> </style></bdi>")]
    public void Hostile_and_foreign_texts_show_as_written(string text) => AssertShown(text, text);

    [Fact]
    public void Characters_no_paper_can_show_are_written_out() => AssertShown("a\u0007b\ud800c\uffff\r\n", "a\\u0007b\\ud800c\\uffff\\u000d\\u000a");

    [Property(MaxTest = 60)]
    public Property Any_text_survives_the_way_through_the_page() =>
        Prop.ForAll(
            ArbMap.Default.ArbFor<string>().Filter(IsText),
            text =>
            {
                AssertShown(text, text);
            }
        );

    [Fact]
    public void The_same_sheet_gives_the_same_bytes_in_any_culture()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        var expected = Everything();
        try
        {
            var odd = (System.Globalization.CultureInfo)System.Globalization.CultureInfo.InvariantCulture.Clone();
            odd.NumberFormat.NegativeSign = "~";
            odd.NumberFormat.NumberDecimalSeparator = ",";
            odd.DateTimeFormat.ShortDatePattern = "d.M.yy";
            System.Globalization.CultureInfo.CurrentCulture = odd;
            Assert.Equal(expected, Everything());
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }

        Assert.DoesNotContain('\r', expected);
    }

    private static string Everything()
    {
        var sheet = SheetShow.Build(
            SheetShow.Full with
            {
                Rig = SheetShow.Full.Rig with
                {
                    Links =
                    [
                        new()
                        {
                            Id = new("t"),
                            Network = new("net"),
                            From = At("desk/net/1"),
                            To = At("box-r/net/1"),
                            LengthMetres = 2.5,
                        },
                    ],
                },
            }
        );
        return HtmlSheetWriter.Write(sheet) + MarkdownSheetWriter.Write(sheet) + TextSheetWriter.Write(sheet);
    }

    private static bool IsText(string? text) =>
        !string.IsNullOrEmpty(text) && !text.EnumerateRunes().Any(rune => System.Text.Rune.IsControl(rune) || rune.Value is 0xFFFD or 0xFFFE or 0xFFFF);

    /// <summary>Puts a text wherever a document has one and looks for it as a whole text in the page.</summary>
    private static void AssertShown(string text, string shown)
    {
        var full = SheetShow.Full;
        var page = Parse(
            full with
            {
                Title = text,
                Venue = text,
                Rig = full.Rig with
                {
                    Devices = [full.Rig.Devices[0] with { Label = text }, full.Rig.Devices[1] with { Notes = text }, full.Rig.Devices[2], full.Rig.Devices[3]],
                },
                Feeds = [full.Feeds[2] with { Name = text, Notes = text }],
                Lines = [full.Lines[0] with { Name = text, Equipment = text, Notes = text }],
                Patch = full.Patch with { Labels = [new() { At = At("desk/channel/1"), Text = text }] },
            }
        );

        var texts = page.Descendants("bdi").Select(element => element.Value).ToArray();

        // Show and venue head 13 sections (the show has no in-ear mix); the desk has its heading and two columns; the feed stands at two outputs, its bus and
        // the mix; the line at its
        // input, its channel and twice to be checked, and so on.
        Assert.True(texts.Count(found => found == shown) >= 13 + 13 + 3 + 4 + 4, "found " + texts.Count(found => found == shown));
        Assert.Empty(page.Descendants("script"));
    }

    private static XDocument Parse(Show show) => XDocument.Parse(HtmlSheetWriter.Write(SheetShow.Build(show)), LoadOptions.PreserveWhitespace);

    /// <summary>The tables of pages, not the pages themselves.</summary>
    private static XElement[] Tables(XContainer page) => [.. page.Descendants("table").Where(table => (string?)table.Attribute("class") != "page")];

    private static XElement[] Sections(XDocument page) => [.. page.Descendants("section")];

    private static XElement[] Class(XElement root, string? name) =>
        [.. root.DescendantsAndSelf().Where(element => (string?)element.Attribute("class") == name)];
}
