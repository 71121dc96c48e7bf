using System.Text.RegularExpressions;
using System.Xml.Linq;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Tests.Reports.Sheets;

/// <summary>Short rows stand side by side on paper, and nothing is lost by it.</summary>
public sealed class DensePagesTests
{
    private static XDocument Html(SheetOptions? options = null) =>
        XDocument.Parse(HtmlSheetWriter.Write(SheetShow.Build(SheetShow.Full, options)), LoadOptions.PreserveWhitespace);

    [Fact]
    public void Rows_of_panels_and_lists_flow_in_two_columns()
    {
        var tables = Html().Descendants("table").Where(table => (string?)table.Attribute("class") != "page").ToArray();

        Assert.NotEmpty(tables);
        Assert.All(tables, table => Assert.Equal("flow2", (string?)table.Parent!.Attribute("class")));
    }

    [Fact]
    public void A_short_row_says_what_the_headings_of_its_columns_said()
    {
        var row = Html()
            .Descendants("section")
            .Single(section => section.Descendants("h2").Single().Value.StartsWith("SR box", StringComparison.Ordinal))
            .Descendants("tr")
            .First(row => row.Elements("td").Any(cell => cell.Elements("p").Elements("b").Any(name => name.Value == "Kick")));

        Assert.Matches(new Regex("^Kick .*to Desk ch 1", RegexOptions.Singleline), row.Elements("td").First().Value);
        Assert.Equal("tick", (string?)row.Elements("td").Last().Attribute("class"));
    }

    [Fact]
    public void Every_word_of_the_text_is_on_the_paper()
    {
        var sheet = SheetShow.Build(SheetShow.Full);
        var paper = string.Concat(XDocument.Parse(HtmlSheetWriter.Write(sheet)).Descendants("body").Single().Value.Where(letter => !char.IsWhiteSpace(letter)));
        var words = PageLayout
            .Set(sheet, draws: true)
            .Pages.SelectMany(page => page.Tables)
            .SelectMany(table => table.Rows)
            .SelectMany(row => row.Cells.SelectMany(cell => cell).Select(line => line.Text).Append(row.Across ?? ""));

        Assert.All(words, word => Assert.Contains(string.Concat(word.Where(letter => !char.IsWhiteSpace(letter))), paper, StringComparison.Ordinal));
    }

    [Fact]
    public void A_device_that_is_only_cabled_has_a_page_when_asked_for_or_changed_and_is_named_anyway()
    {
        var moved = SheetShow.Full with
        {
            Rig = SheetShow.Full.Rig with
            {
                Devices = [.. SheetShow.Full.Rig.Devices.Select(device => device.Id.Value == "amp" ? device with { Label = "Old amp" } : device)],
            },
        };

        Assert.DoesNotContain("Right amp amp", Titles(Html()));
        Assert.Contains("Right amp \u00b7 amp \u00b7 only cabled, no page", Html().Descendants("section").First().Value, StringComparison.Ordinal);
        Assert.Contains("Right amp amp", Titles(Html(new SheetOptions { Parts = [SheetSection.Devices] })));
        Assert.Contains("Right amp amp", Titles(Html(new SheetOptions { Devices = [new Id<Device>("amp")] })));
        Assert.Contains("Right amp amp", Titles(Html(new SheetOptions { Since = ShowResolver.Resolve(moved, new ProfileLibrary([])) })));
    }

    [Fact]
    public void Unused_points_of_a_panel_are_one_line_at_its_end()
    {
        var outputs = PageLayout
            .Set(SheetShow.Build(SheetShow.Full))
            .Pages.Single(page => page.Title == "SR box")
            .Tables.Single(table => table.Title.StartsWith("Outputs", StringComparison.Ordinal));

        Assert.Equal("Free", Assert.Single(outputs.Rows, row => row.Across is not null).Across!.Split(':')[0]);
        Assert.NotNull(outputs.Rows[^1].Across);
    }

    [Fact]
    public void Large_type_stands_in_one_column_and_breaks_no_words() =>
        Assert.Contains(".large .flow2, .large .flow3 { columns: 1; }", HtmlSheetWriter.Write(SheetShow.Build(SheetShow.Full)), StringComparison.Ordinal);

    private static IEnumerable<string> Titles(XDocument page) => page.Descendants("h2").Select(title => title.Value);
}
