using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class ContentCodeTests
{
    [Fact]
    public void The_code_is_that_of_the_written_document()
    {
        // sha256sum of the text below starts with 0d6d99f6f47915d9; that number modulo 24^6, digit by digit in base 24.
        const string Written = "{\n  \"schemaVersion\": 1,\n  \"title\": \"A\",\n  \"rig\": {}\n}\n";
        var show = new Show { Title = "A", Rig = new Rig() };

        Assert.Equal(Written, System.Text.Encoding.UTF8.GetString(ShowWriter.ToUtf8(show)));
        Assert.Equal("NDMX7Q", ContentCode.Of(show));
    }

    [Fact]
    public void Any_change_gives_another_code()
    {
        var full = SheetShow.Full;
        Show[] shows = [full, full with { Revision = "D" }, full with { Lines = [] }, full with { Patch = full.Patch with { Labels = [] } }];

        Assert.Equal(4, shows.Select(ContentCode.Of).Distinct().Count());
    }

    [Fact]
    public void Codes_have_six_symbols_none_of_which_looks_like_another()
    {
        var codes = string.Concat(Enumerable.Range(0, 200).Select(i => ContentCode.Of(new Show { Title = $"Show {i}", Rig = new Rig() })));

        Assert.Equal(1200, codes.Length);
        Assert.DoesNotContain(codes, symbol => "0O1ILl2Z5S8BV".Contains(symbol, StringComparison.Ordinal));
        Assert.Equal(24, codes.Distinct().Count());
    }
}
