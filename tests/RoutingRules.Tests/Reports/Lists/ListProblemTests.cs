using System.Text;
using RoutingRules.Reports.Lists;
using static RoutingRules.Tests.Reports.Lists.ListImportShow;

namespace RoutingRules.Tests.Reports.Lists;

/// <summary>What is said of lists that cannot be taken.</summary>
public sealed class ListProblemTests
{
    [Fact]
    public void Every_problem_is_told_with_line_column_and_remedy()
    {
        var result = Import(
            """
            id,Name,role,source,to,priority,limiter,preferred,separateFrom
            ears,"one
            two",monitor,desk/aux/9-10,box,normal,yes,,

            a,A,Mon itor,desk/aux,box,hihg,maybe,0x,ears
            b,B,,desk/aux/4-3,box/out/1 | box,low,,100000,ears by cable
            ears,Again,,desk/aux/1,box,,,,
            ,,,desk/aux/1,box,,,,
            c,C,desk/aux/1
            d,D,,,"; ;",,,,
            main-l,Main L,,,,,,,
            """
        );

        Assert.Null(result.Show);
        Assert.Empty(result.Edits);
        Assert.Equal(
            [
                (2, "Name", "holds"),
                (5, "role", "no word"),
                (5, "source", "wrong number of parts"),
                (5, "priority", "did you mean high?"),
                (5, "limiter", "neither yes nor no"),
                (5, "preferred", "no whole number"),
                (5, "separateFrom", "says of no feed"),
                (6, "source", "runs backwards"),
                (6, "to", "a point stands alone"),
                (6, "preferred", "99999"),
                (6, "separateFrom", "device, power, link"),
                (7, null, "line 2 is about"),
                (8, null, "does not say which feed"),
                (9, null, "the row has 3 cells, and there are 9 headers"),
                (10, "source", "the cell is empty"),
                (10, "to", "names nothing"),
                (11, "source", "empty"),
                (11, "to", "empty"),
            ],
            result.Problems.Select(problem => (problem.Line, problem.Column, problem.Message)),
            (expected, found) =>
                (expected.Item1, expected.Item2) == (found.Line, found.Column) && found.Message.Contains(expected.Item3, StringComparison.OrdinalIgnoreCase)
        );
    }

    [Theory]
    [InlineData("id,colour\nears,3", "column \"colour\": No member of a feed has this name. Correct the header")]
    [InlineData("id,prioirty\nears,high", "did you mean priority?")]
    [InlineData("id,name,Name\nears,a,b", "the column \"name\" is about name as well")]
    [InlineData("source,to\ndesk/aux/1,box", "no column says which feed a row is about")]
    [InlineData("id,name,\nears,Ears,\nmain-l,Main L,x", "line 3: Column 3 has no header")]
    [InlineData("id,name\nnew,New", "the feed new is new and needs source, for which the list has no column")]
    [InlineData("name,source,to\nNew,desk/aux/1,box\nNew,desk/aux/2,box", "line 2 has the same name, and neither has an id")]
    [InlineData("id,source,to\nb\u00e4d,desk/aux/1,box", "line 2, column \"id\"")]
    [InlineData("", "the list is empty")]
    [InlineData("\n ,\n", "column 1 has no header")]
    [InlineData("\0\0", "UTF-16")]
    [InlineData("id\nea\0rs", "zero character")]
    public void Lists_that_cannot_be_taken_say_why(string list, string expected)
    {
        var result = Import(list);

        Assert.Null(result.Show);
        Assert.Contains(expected, string.Join('\n', result.Problems), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Lists_in_other_encodings_are_refused()
    {
        const string List = "id,name\nears,\u00d6hr";
        Assert.Contains(
            "line 2: The list holds bytes that are not UTF-8",
            Bytes(Encoding.Latin1.GetBytes(List)).Problems[0].ToString(),
            StringComparison.Ordinal
        );
        Assert.Contains("UTF-16", Bytes([.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(List)]).Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("UTF-16", Bytes(Encoding.BigEndianUnicode.GetBytes(List)).Problems[0].Message, StringComparison.Ordinal);
        Assert.Equal("\u00d6hr", Bytes([.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(List)]).Show!.Feeds[1].Name);

        static ListImportResult Bytes(byte[] bytes) => ListImport.Read(Before, bytes, IntentList.Feeds);
    }

    [Fact]
    public void Limits_are_kept()
    {
        Assert.Contains(
            "more than the limit of 9",
            Import("id,name\nears,a", new ListImportOptions { MaxBytes = 9 }).Problems[0].Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "the list has 2 rows",
            Import("id,name\nears,a\nmain-l,b", new ListImportOptions { MaxRows = 1 }).Problems[0].Message,
            StringComparison.OrdinalIgnoreCase
        );
        Assert.Equal(
            ["2 more problems are not listed."],
            Import("id,role\nears,a b\nmain-l,b c\nx,y z", new ListImportOptions { MaxProblems = 3 }).Problems.Skip(3).Select(problem => problem.Message)
        );
    }

    [Fact]
    public void Two_feeds_of_one_name_need_ids_and_two_of_one_id_are_refused()
    {
        var twice = Before with { Feeds = [.. Before.Feeds, Before.Feeds[1] with { Id = new("ears-2") }, Before.Feeds[0]] };
        var result = ListImport.Read(twice, "name,limiter,id\nEars,no,\n,,main-l"u8, IntentList.Feeds);

        Assert.Equal(
            ["2 feeds have this name: ears, ears-2.", "The show has more than one feed with the id main-l."],
            result.Problems.Select(problem => problem.Message)
        );
    }
}
