using System.Xml.Linq;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Answers;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;
using RoutingRules.Tests.Promises;
using RoutingRules.Tests.Reports.Sheets;

namespace RoutingRules.Tests.Reports;

/// <summary>What holds for every page that is printed and worked with: sheets, fallback cards, changeover cards.</summary>
public sealed class PrintedPagesTests
{
    private static readonly Show Before = SheetShow.Full;
    private static readonly Show After = Before with { Revision = "D", Lines = [.. Before.Lines.Skip(1)], Feeds = [.. Before.Feeds.Skip(1)] };

    private static (string Html, string Code) Print(string which) =>
        which switch
        {
            "sheets" => (
                HtmlSheetWriter.Write(
                    SheetShow.Build(After, new SheetOptions { IsLargeType = true, Since = ShowResolver.Resolve(Before, new ProfileLibrary([])) })
                ),
                ContentCode.Of(After)
            ),
            "losses" => (ImpactReport.Html(Promise.Engine.Impact(Before, new ImpactOptions { Pairs = true }), Before), ContentCode.Of(Before)),
            _ => (
                ChangeoverReport.Write(Promise.Engine.PlanChangeover(Before, After), Promise.Engine.Compare(Before, After), Before, After, PageFormat.Html),
                ContentCode.Of(After)
            ),
        };

    [Theory]
    [InlineData("sheets")]
    [InlineData("losses")]
    [InlineData("changeover")]
    public void Every_page_has_the_code_of_the_sheets_in_the_head_that_paper_repeats(string which)
    {
        var (html, code) = Print(which);
        var sections = Parse(html).Descendants("section").ToArray();

        Assert.NotEmpty(sections);
        Assert.All(
            sections,
            section =>
                Assert.Equal(
                    code,
                    section.Element("table")!.Element("thead")!.Descendants("p").Single(line => (string?)line.Attribute("class") == "code").Element("b")!.Value
                )
        );
    }

    [Theory]
    [InlineData("sheets")]
    [InlineData("losses")]
    [InlineData("changeover")]
    public void Every_row_of_a_list_that_is_ticked_off_has_a_box(string which)
    {
        var (html, code) = Print(which);
        var ticked = Parse(html)
            .Descendants("table")
            .Where(table => (string?)table.Attribute("class") != "page" && table.Element("thead")!.Elements("tr").Last().Elements("th").Last().Value == "Done")
            .ToArray();

        Assert.True(ticked.Length > 0, code);

        // Rows across all columns and free places are not work; a row that has nothing to plug or load has an empty last cell and says why in another.
        foreach (
            var row in ticked
                .SelectMany(table => table.Element("tbody")!.Elements("tr"))
                .Where(row => row.Elements("th").Any() && row.Attribute("class")?.Value is not ("stop" or "free" or "blank"))
        )
        {
            Assert.True(IsTicked(row) || IsIdle(row), row.Value);
        }
    }

    [Theory]
    [InlineData("desk/transmit/5-8 takes 1-4", "desk/transmit/<span class=\"run\">5-8</span> takes <span class=\"run\">1-4</span>")]
    [InlineData("out A-D", "out <span class=\"run\">A-D</span>")]
    [InlineData("2027-06-12, box-r-2, mon-1", "2027-06-12, box-r-2, mon-1")]
    [InlineData("<5-8>", "&lt;<span class=\"run\">5-8</span>&gt;")]
    [InlineData("1-2-3", "1-2-3")]
    public void A_run_of_numbers_stays_on_one_line(string text, string expected) => Assert.Equal($"<bdi>{expected}</bdi>", HtmlText.Line(text));

    private static bool IsTicked(XElement row) => row.Elements("td").Last().Descendants("span").Any(span => (string?)span.Attribute("class") == "box");

    private static bool IsIdle(XElement row) =>
        row.Elements("td").Any(cell => cell.Value.Contains("free", StringComparison.Ordinal) || cell.Value.Contains("GONE", StringComparison.Ordinal));

    private static XDocument Parse(string html) => XDocument.Parse(html);
}
