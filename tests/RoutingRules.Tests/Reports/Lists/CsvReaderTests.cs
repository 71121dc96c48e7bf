using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;
using RoutingRules.Reports.Sheets.Pages;
using CsvReader = RoutingRules.Reports.Lists.CsvReader;

namespace RoutingRules.Tests.Reports.Lists;

public sealed class CsvReaderTests
{
    private static readonly string[] Pieces = ["a", "\"", "\r\n", "\n", "\r", ",", ";", "\t", " ", "=", "'", "\u00e9", "\U0001F3B8", ""];

    // The examples of RFC 4180, section 2, rules 1, 2, 5, 6 and 7; from memory.
    [Theory]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b\r\nbb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"b\"\"bb\",\"ccc\"", "aaa|b\"bb|ccc")]
    public void The_examples_of_the_rfc_are_read_as_it_says(string text, string expected)
    {
        var problems = new ListProblems(9);
        var rows = CsvReader.Read(text, ',', problems);

        Assert.True(problems.IsEmpty);
        Assert.Equal(expected, string.Join('/', rows.Select(row => string.Join('|', row.Cells.Select(cell => cell.Text)))));
    }

    [Theory]
    [InlineData("a,b\r\nc,\"d\n\ne\",f\rg\n", 1, 2, 5)]
    [InlineData("\n\n\"a\r\nb\"\r\nc", 1, 2, 3, 5)]
    public void Lines_are_counted_through_quoted_breaks(string text, params int[] expected) =>
        Assert.Equal(expected, CsvReader.Read(text, ',', new ListProblems(9)).Select(row => row.Line));

    [Theory]
    [InlineData("a\"b,c", 1, "is not in quotation marks")]
    [InlineData("x\n\"a\"b,c", 2, "follows the closing quotation mark")]
    [InlineData("x\n\"a\n\nb,c", 2, "never ends")]
    public void Bad_quotes_are_told_with_the_line_on_which_the_cell_begins(string text, int line, string message)
    {
        var problems = new ListProblems(9);
        CsvReader.Read(text, ',', problems);
        var problem = Assert.Single(problems.ToList());

        Assert.Equal(line, problem.Line);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Remedy);
    }

    [Theory]
    [InlineData("id,name\na;b;c;d,e", ',')]
    [InlineData("id;name;to\na,b,c,d,e", ';')]
    [InlineData("id\tname\n", '\t')]
    [InlineData("\r\n\"a,b,c\";d\n", ';')]
    [InlineData("id", ',')]
    public void The_separator_is_the_most_frequent_one_of_the_first_row(string text, char expected) => Assert.Equal(expected, CsvReader.Guess(text));

    [Property(MaxTest = 300)]
    public Property What_another_writer_writes_is_read_as_another_reader_reads_it() =>
        Prop.ForAll(
            Tables(),
            table =>
            {
                foreach (var separator in new[] { ',', ';', '\t' })
                {
                    var theirs = Write(table, separator);
                    if (!Same(Ours(theirs, separator), Theirs(theirs, separator)) || !Same(Ours(theirs, separator), table))
                    {
                        return false.Label($"{Show(theirs)} here: {Show(Ours(theirs, separator))} there: {Show(Theirs(theirs, separator))}");
                    }
                }

                return true.ToProperty();
            }
        );

    [Property(MaxTest = 300)]
    public Property What_is_written_here_is_read_alike_by_another_reader_and_here() =>
        Prop.ForAll(
            Tables(),
            table =>
            {
                var text = new StringBuilder();
                foreach (var row in table)
                {
                    CsvText.AppendRow(text, row.ToValueList(), ';');
                }

                return Same(Theirs(text.ToString(), ';'), table) && Same(Ours(text.ToString(), ';'), table);
            }
        );

    [Property(MaxTest = 300)]
    public Property Any_text_at_all_is_read_to_its_end() =>
        Prop.ForAll(
            Gen.Elements(Pieces).ListOf().Select(string.Concat).ToArbitrary(),
            text =>
            {
                var rows = CsvReader.Read(text, ',', new ListProblems(9));
                var breaks = text.Replace("\r\n", "\n", StringComparison.Ordinal).Count(letter => letter is '\r' or '\n');
                return rows.All(row => row.Cells.Count > 0 && row.Line >= 1 && row.Line <= breaks + 1)
                    && rows.Zip(rows.Skip(1)).All(pair => pair.First.Line < pair.Second.Line);
            }
        );

    private static Arbitrary<string[][]> Tables()
    {
        var cell = Gen.Elements(Pieces).ArrayOf(4).Select(string.Concat);
        return (from columns in Gen.Choose(2, 5) from rows in cell.ArrayOf(columns).NonEmptyListOf() select rows.ToArray()).ToArbitrary();
    }

    private static string[][] Ours(string text, char separator)
    {
        var problems = new ListProblems(9);
        var rows = CsvReader.Read(text, separator, problems);
        Assert.True(problems.IsEmpty);
        return [.. rows.Select(row => row.Cells.Select(cell => cell.Text).ToArray())];
    }

    private static string Write(string[][] table, char separator)
    {
        using var text = new StringWriter();
        using (var writer = new CsvWriter(text, Settings(separator)))
        {
            foreach (var row in table)
            {
                foreach (var cell in row)
                {
                    writer.WriteField(cell);
                }

                writer.NextRecord();
            }
        }

        return text.ToString();
    }

    private static string[][] Theirs(string text, char separator)
    {
        using var reader = new CsvParser(new StringReader(text), Settings(separator));
        var rows = new List<string[]>();
        while (reader.Read())
        {
            rows.Add(reader.Record!);
        }

        return [.. rows];
    }

    private static string Show<T>(T value) => System.Text.Json.JsonSerializer.Serialize(value);

    private static CsvConfiguration Settings(char separator) =>
        new(CultureInfo.InvariantCulture)
        {
            Delimiter = separator.ToString(),
            HasHeaderRecord = false,
            IgnoreBlankLines = false,
        };

    private static bool Same(string[][] left, string[][] right) =>
        left.Length == right.Length && left.Zip(right).All(pair => pair.First.SequenceEqual(pair.Second));
}
