using System.Text;
using RoutingRules.Configuration;
using RoutingRules.Documents;
using RoutingRules.Engine.Configuration;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Tests.Lists;

public sealed class ListImportTests
{
    private const string Text = """
        {
          "schemaVersion": 1,
          "title": "Lists",
          "rig": {
            "zones": [ { "id": "stage-left", "side": "house-right" } ],
            "devices": [ { "id": "desk", "profile": "generic/console-medium" }, { "id": "box", "profile": "generic/stage-box-medium" } ]
          },
          "feeds": [
            { "id": "main-l", "name": "Main L", "role": "main", "source": "desk/main/1",
              "to": [ { "at": "box/out/1", "extensions": { "tool": { "colour": 3 } } }, { "zones": [ "stage-left" ], "devices": [ "box" ] } ],
              "separateFrom": [ { "feed": "ears", "by": "power" } ], "extensions": { "tool": true } },
            { "id": "ears",   "name": "Ears", "role": "in-ear", "source": "desk/aux/9-10", "to": [ { "devices": [ "box" ] } ], "limiter": true }
          ],
          "lines": [
            { "id": "keys", "name": "Keys", "kind": "line", "width": 2, "from": { "at": [ "box/in/9-10" ], "extensions": { "a": 1 } },
              "to": [ "desk/channel/9-10" ] },
            { "id": "radio", "kind": "line", "from": { "source": "desk/aux/18" }, "to": [ "desk/channel/11" ] }
          ]
        }
        """;

    private static readonly Show Show = ShowReader.Read(Encoding.UTF8.GetBytes(Text)).Value!;

    [Fact]
    public void A_list_has_a_column_for_each_member_and_says_lists_in_one_cell()
    {
        var rows = ListExport.Write(Show, IntentList.Feeds).Split("\r\n");

        Assert.Equal(
            "id,name,role,set,part,source,to,priority,preferred,hold,group,spread,separateFrom,backupOf,limiter,delayMilliseconds,override,person,pack,position,notes",
            rows[0]
        );
        Assert.Equal("main-l,Main L,main,,,desk/main/1,box/out/1; box | zone stage-left,normal,,,,no,ears by power,,,,,,,,", rows[1]);
        Assert.Equal("ears,Ears,in-ear,,,desk/aux/9-10,box,normal,,,,no,,,yes,,,,,,", rows[2]);
        Assert.Equal(
            [
                "keys,Keys,line,either,2,box/in/9-10,desk/channel/9-10,normal,,,,,,,,",
                "radio,,line,either,1,source desk/aux/18,desk/channel/11,normal,,,,,,,,",
                "",
            ],
            ListExport.Write(Show, IntentList.Lines).Split("\r\n")[1..]
        );
    }

    [Fact]
    public void A_changed_cell_changes_its_member_and_not_one_byte_besides()
    {
        var list = ListExport
            .Write(Show, IntentList.Feeds)
            .Replace("box/out/1; box", "box/out/3-4 ;BOX2|box", StringComparison.Ordinal)
            .Replace(",Ears,", ",Ears fiddle,", StringComparison.Ordinal);
        var result = Import(list);

        Assert.Equal([("main-l", "to"), ("ears", "name")], result.Changed.Select(change => (change.Id, Assert.Single(change.Members))));
        var note = Assert.Single(result.Notes);
        Assert.Equal("line 2, column \"to\": The show has no device BOX2; did you mean box? Correct the cell, or add the device.", note.ToString());
        var edited = Encoding.UTF8.GetString(ShowText.Edit(Encoding.UTF8.GetBytes(Text), result.Edits, result.Show!).Utf8.Span);
        var expected = Text.Replace(
                "[ { \"at\": \"box/out/1\", \"extensions\": { \"tool\": { \"colour\": 3 } } }, { \"zones\": [ \"stage-left\" ], \"devices\": [ \"box\" ] } ]",
                "[ { \"at\": \"box/out/3-4\", \"extensions\": { \"tool\": { \"colour\": 3 } } }, { \"devices\": [ \"BOX2\", \"box\" ], \"zones\": "
                    + "[ \"stage-left\" ] } ]",
                StringComparison.Ordinal
            )
            .Replace("\"Ears\"", "\"Ears fiddle\"", StringComparison.Ordinal);
        Assert.Equal(expected, edited);
    }

    [Theory]
    [InlineData("id;name\nears;New", "name")]
    [InlineData("id,limiter\nears,no", "limiter")]
    [InlineData("id,limiter\nears,", "limiter")]
    [InlineData("id,limiter,hold\nears,X,FALSE", "hold")]
    [InlineData("id,role,priority\nears,Monitor,HIGH", "role,priority")]
    [InlineData("name,preferred\nEars, 9 ", "preferred")]
    [InlineData("id,Separate From,Backup_Of\nears,main-l by Device,main-l", "separateFrom,backupOf")]
    public void Cells_are_read_as_people_write_them(string list, string members)
    {
        var result = Import(list);

        Assert.Empty(result.Problems);
        var change = Assert.Single(result.Changed);
        Assert.Equal("ears", change.Id);
        Assert.Equal(members, string.Join(',', change.Members));
    }

    [Fact]
    public void New_rows_get_an_id_from_their_name_and_stand_behind_the_row_before_them()
    {
        var result = Import(
            """
            id,name,source,to
            ,First!,desk/aux/1,box
            main-l,Main L,desk/main/1,"box/out/1; box | zone stage-left"
            ,Vox  1,desk/aux/2,zone stage-left
            ,Vox-1,desk/aux/3,box/out/5
            ,Ears,desk/aux/9-10,box
            ,ears,desk/aux/5,box
            ,пение,desk/aux/6,box
            """
        );

        Assert.Empty(result.Problems);
        Assert.Equal(["first", "main-l", "vox-1", "vox-1-2", "ears", "ears-2", "feed"], result.Show!.Feeds.Select(feed => feed.Id.Value));
        Assert.Equal("Vox  1", result.Show.Feeds[2].Name);
        Assert.Equal(["first", "vox-1", "vox-1-2", "ears-2", "feed"], result.Added);
        Assert.Equal(["main-l", "ears"], result.Same);

        // The same rows in another order give the same ids.
        var other = Import("name,source,to\nпение,desk/aux/6,box\nears,desk/aux/5,box\nVox-1,desk/aux/3,box/out/5\nVox  1,desk/aux/2,zone stage-left");
        Assert.Equal(["main-l", "ears", "feed", "ears-2", "vox-1-2", "vox-1"], other.Show!.Feeds.Select(feed => feed.Id.Value));
    }

    [Fact]
    public void What_the_list_does_not_have_stays_unless_it_is_to_go()
    {
        var kept = Import("id,name\nears,Ears\n");
        var removed = Import("id,name\nears,Ears\n", new ListImportOptions { RemovesAbsent = true });

        Assert.Equal(["main-l"], kept.Kept);
        Assert.Empty(kept.Edits);
        Assert.Equal(["main-l"], removed.Removed);
        Assert.Equal(Show with { Feeds = [Show.Feeds[1]] }, removed.Show);
    }

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

        static ListImportResult Bytes(byte[] bytes) => ListImport.Read(Show, bytes, IntentList.Feeds);
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
        var twice = Show with { Feeds = [.. Show.Feeds, Show.Feeds[1] with { Id = new("ears-2") }, Show.Feeds[0]] };
        var result = ListImport.Read(twice, "name,limiter,id\nEars,no,\n,,main-l"u8, IntentList.Feeds);

        Assert.Equal(
            ["2 feeds have this name: ears, ears-2.", "The show has more than one feed with the id main-l."],
            result.Problems.Select(problem => problem.Message)
        );
    }

    [Fact]
    public void A_crew_calls_columns_and_words_as_it_likes()
    {
        var config = new ListsConfig
        {
            Separator = ListSeparator.Semicolon,
            Lines = new ListConfig
            {
                Columns =
                [
                    new() { Header = "Channel name", Member = "name" },
                    new() { Header = "Desk", Member = "to" },
                    new() { Header = "48 V", Member = "phantom" },
                ],
                Ignore = ["Colour"],
                Words =
                [
                    new()
                    {
                        Member = "phantom",
                        Cell = "On",
                        Value = "required",
                    },
                    new()
                    {
                        Member = "phantom",
                        Cell = "-",
                        Value = "",
                    },
                ],
            },
        };
        var result = ListImport.Read(
            Show,
            "CHANNEL-NAME;48v;colour;Tray\nKeys;on;red;1\n"u8,
            IntentList.Lines,
            new ListImportOptions { Config = config, Ignore = ["tray"] }
        );
        var back = ListImport.Read(result.Show!, "channel name;48 V\nKeys;-"u8, IntentList.Lines, new ListImportOptions { Config = config });
        var written = ListExport.Write(result.Show!, IntentList.Lines, config);

        Assert.Equal(PhantomNeed.Required, result.Show!.Lines[0].Phantom);
        Assert.Equal(Show, back.Show);
        Assert.StartsWith("id;Channel name;kind;48 V;width;from;Desk;", written, StringComparison.Ordinal);
        Assert.Empty(ListImport.Read(result.Show, Encoding.UTF8.GetBytes(written), IntentList.Lines, new ListImportOptions { Config = config }).Edits);
        Assert.Throws<ArgumentException>(() =>
            Import(
                "id",
                new ListImportOptions { Config = new ListsConfig { Feeds = new ListConfig { Columns = [new() { Header = "A", Member = "nothing" }] } } }
            )
        );
        Assert.Throws<ArgumentException>(() => ListExport.Write(Show, IntentList.Feeds, new ListsConfig { Feeds = new ListConfig { Ignore = ["Pack"] } }));
    }

    [Fact]
    public void Content_of_other_tools_goes_only_with_its_entry_and_that_is_said()
    {
        var result = Import("id,to\nmain-l,box | zone stage-left");

        Assert.Contains("what other tools kept in an entry goes with it", Assert.Single(result.Notes).Message, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(Show.Feeds[0].Extensions, result.Show!.Feeds[0].Extensions);
        var moved = ListImport.Read(Show, "id,from\nkeys,box"u8, IntentList.Lines);
        Assert.Equal(Show.Lines[0].From.Extensions, moved.Show!.Lines[0].From.Extensions);
    }

    [Fact]
    public void Configurations_of_lists_are_laid_over_each_other()
    {
        var files = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["house.json"] =
                """{ "schemaVersion": 1, "lists": { "separator": "tab", "feeds": { "columns": [ { "header": "Bus", "member": "source" } ],"""
                + """ "ignore": [ "A" ] } } }""",
            ["tour.json"] =
                """{ "schemaVersion": 1, "extends": [ "house.json" ], "lists": { "feeds": { "columns": [ { "header": "Mix","""
                + """ "member": "name" } ] }, "lines": { "ignore": [ "B" ] } } }""",
            ["bad.json"] = """{ "schemaVersion": 1, "lists": { "feeds": { "columns": [ { "header": "Mix", "member": "nmae" } ] } } }""",
        };
        ConfigLoad Load(string name) => ConfigLoader.Load(name, path => new DocumentFile { Path = path, Utf8 = Encoding.UTF8.GetBytes(files[path]) });
        var lists = Load("tour.json").Config!.Config.Lists;

        Assert.Equal(ListSeparator.Tab, lists.Separator);
        Assert.Equal(["Bus", "Mix"], lists.Feeds.Columns.Select(column => column.Header));
        Assert.Equal(["A"], lists.Feeds.Ignore);
        Assert.Equal(["B"], lists.Lines.Ignore);
        Assert.Contains("did you mean name?", Assert.Single(Load("bad.json").Problems).Finding.Message, StringComparison.Ordinal);
    }

    private static ListImportResult Import(string list, ListImportOptions? options = null) =>
        ListImport.Read(Show, Encoding.UTF8.GetBytes(list), IntentList.Feeds, options);
}
