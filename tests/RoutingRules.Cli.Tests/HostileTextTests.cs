using System.IO.Compression;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Xml;
using AngleSharp.Html.Parser;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests;

/// <summary>
/// Texts of documents through every command and format. The judges are others: System.Xml with its check of characters (XML 1.0, section 2.2), AngleSharp
/// for HTML, Markdig for Markdown (CommonMark with pipe tables); a hostile text must give the very structure that a tame one of its length gives.
/// </summary>
public sealed class HostileTextTests : IDisposable
{
    private static readonly string[] TextMembers =
    [
        "title",
        "venue",
        "revision",
        "label",
        "name",
        "notes",
        "reason",
        "way",
        "text",
        "equipment",
        "stand",
        "position",
        "suppliedBy",
        "person",
        "pack",
    ];

    private static readonly string[] Questions =
    [
        "check",
        "assign --out OUT",
        "why main-l",
        "trace desk/aux/1",
        "compare OTHER",
        "changeover OTHER",
        "impact",
        "sheet",
        "fix --dry-run --unsafe",
    ];

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().Build();

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    public static TheoryData<string> Texts =>
        [
            "-",
            "- a",
            "+ a",
            "* a",
            "1. a",
            "1) a",
            "# x",
            "> x",
            "| x |",
            "=",
            "===",
            "---",
            "    code",
            "```",
            "~~~",
            "<b>x</b>",
            "<script>alert(1)</script>",
            "[a](b)",
            "![a](b)",
            "<!-- x",
            "&amp;",
            "]]>",
            "x\\",
            "a|b",
            ":--|--:",
            "**x** _y_ `z`",
            "'\"><i>",
            "\ufffe",
            "x\uffff",
            "\u202eabc",
            "\u2066x\u2069",
            "a\u2028- b",
            "\ufeffx",
            "\u200fx\u061c",
            "\U0001fffe",
            "__x__\u00a0 ",
        ];

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_hostile_text_shows_as_text_in_every_format(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var hostile = Write("hostile.show.json", text);
        var tame = Write("tame.show.json", string.Concat(text.Select((_, at) => (char)('a' + (at % 26)))));
        Write("other.show.json", "another text altogether");

        foreach (var question in Questions)
        {
            Assert.Equal(Run(tame, question, null).Code, NoSteering(Run(hostile, question, null)).Code);
        }

        foreach (var question in Questions.Where(question => question is not ("trace desk/aux/1" or "fix --dry-run --unsafe" or "assign --out OUT")))
        {
            Assert.Equal(Blocks(Run(tame, question, "markdown").Out), Blocks(NoSteering(Run(hostile, question, "markdown")).Out));
        }

        foreach (var question in Questions.Where(question => question is "check" or "compare OTHER" or "changeover OTHER" or "impact" or "sheet"))
        {
            var html = Run(hostile, question, "html").Out;
            Parse(Encoding.UTF8.GetBytes(html));
            Assert.Equal(Elements(Run(tame, question, "html").Out), Elements(html));
        }

        Parse(Run(hostile, "sheet", "svg").OutBytes);
        Parse(Run(hostile, "check", "junit").OutBytes);
        using var book = new ZipArchive(new MemoryStream(Run(hostile, "sheet", "xlsx").OutBytes));
        foreach (var part in book.Entries)
        {
            using var content = part.Open();
            Parse(content);
        }
    }

    /// <summary>A terminal gets documents as well, such as the show of <c>new</c> and the patch of <c>fix</c>; they stay the JSON they are.</summary>
    [Theory]
    [MemberData(nameof(Texts))]
    public void Nothing_steers_a_terminal(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var hostile = Write("hostile.show.json", text);
        foreach (
            var arguments in new string[][]
            {
                ["new", "--title", text],
                ["fix", hostile, "--unsafe"],
                ["fix", hostile, "--dry-run", "--unsafe", "--format", "patch"],
                ["fix", hostile, "--dry-run", "--unsafe", "--format", "json"],
                ["assign", hostile],
                ["check", hostile, "--format", "json"],
                ["export", hostile, "--list", "feeds"],
                ["upgrade", hostile],
                ["pin", hostile],
                ["pin", hostile, "--dry-run"],
                ["sheet", hostile, "--format", "html"],
            }
        )
        {
            var (code, output, error) = OnTerminal(arguments);

            Assert.True(code != 2, $"{arguments[0]}: {error}");
            Assert.DoesNotContain(output + error, Steers);
            if (output.StartsWith('{') || output.StartsWith('['))
            {
                var plain = Tool.Run(arguments).Out;
                Assert.True(JsonNode.DeepEquals(JsonNode.Parse(plain), JsonNode.Parse(output)), output);
            }
        }
    }

    [Fact]
    public void A_return_of_the_carriage_and_halves_of_characters_are_written_out_however_they_are_cut()
    {
        var text = Encoding.UTF8.GetBytes("a\r\nb\rc\u202ed\u001b[31m\te\u0085\U0001f3b8\f\n");
        for (var size = 1; size <= text.Length; size++)
        {
            using var terminal = new MemoryStream();
            using (var output = new Output.TerminalOutput(terminal))
            {
                foreach (var piece in text.Chunk(size))
                {
                    output.Write(piece);
                }
            }

            Assert.Equal("a\r\nb\\u000dc\\u202ed\\u001b[31m\te\\u0085\U0001f3b8\f\n", Encoding.UTF8.GetString(terminal.ToArray()));
        }
    }

    private static bool Steers(char c) =>
        (char.IsControl(c) && c is not ('\n' or '\r' or '\t' or '\f'))
        || c
            is '\u2028'
                or '\u2029'
                or '\u061c'
                or '\u200e'
                or '\u200f'
                or '\ufeff'
                or '\ufffe'
                or '\uffff'
                or (>= '\u202a' and <= '\u202e')
                or (>= '\u2066' and <= '\u2069');

    private static ToolResult NoSteering(ToolResult result)
    {
        Assert.DoesNotContain(result.Out + result.Error, Steers);
        return result;
    }

    private ToolResult Run(string show, string question, string? format)
    {
        var words = question
            .Replace("OTHER", folder.At("other.show.json"), StringComparison.Ordinal)
            .Replace("OUT", folder.At("out.show.json"), StringComparison.Ordinal)
            .Split(' ');
        var result = Tool.Run([words[0], show, .. words[1..], .. format is null ? Array.Empty<string>() : ["--format", format]]).Civil();
        Assert.NotEqual(2, result.Code);
        return result;
    }

    private static (int Code, string Output, string Error) OnTerminal(string[] arguments)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter();
        var code = CliRunner.Run(arguments, new CliConsole(Stream.Null, output, error) { IsTerminal = true });
        return (code, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }

    /// <summary>The club night with a text in every place that has one.</summary>
    private string Write(string name, string text)
    {
        var show = JsonNode.Parse(File.ReadAllBytes(Repository.At("schema", "examples", "02-club-night.show.json")))!;
        Replace(show, text);
        return folder.Write(name, JsonSerializer.SerializeToUtf8Bytes(show));
    }

    private static void Replace(JsonNode? node, string text)
    {
        if (node is JsonArray list)
        {
            foreach (var item in list)
            {
                Replace(item, text);
            }
        }
        else if (node is JsonObject members)
        {
            foreach (var (name, value) in members.ToList())
            {
                if (TextMembers.Contains(name) && value?.GetValueKind() == JsonValueKind.String)
                {
                    members[name] = text;
                }
                else
                {
                    Replace(value, text);
                }
            }
        }
    }

    private static void Parse(byte[] xml)
    {
        using var stream = new MemoryStream(xml);
        Parse(stream);
    }

    private static void Parse(Stream xml)
    {
        using var reader = XmlReader.Create(xml, new XmlReaderSettings { CheckCharacters = true, DtdProcessing = DtdProcessing.Ignore });
        while (reader.Read()) { }
    }

    /// <summary>The elements of a page in their order; drawings break texts where they have room, so that only their number counts.</summary>
    private static string Elements(string html) =>
        string.Join(
            ' ',
            new HtmlParser()
                .ParseDocument(html)
                .All.Where(element => element.LocalName == "svg" || element.Closest("svg") is null)
                .Select(element => element.LocalName)
        );

    private static string Blocks(string markdown) =>
        string.Join(
            ' ',
            Markdown
                .Parse(markdown, Pipeline)
                .Descendants()
                .Where(node => node is Block or LinkInline or HtmlInline or EmphasisInline or CodeInline)
                .Select(node => node.GetType().Name)
        );
}
