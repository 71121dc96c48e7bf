using System.Text;
using RoutingRules.Configuration;
using RoutingRules.Documents;
using RoutingRules.Engine.Configuration;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;
using static RoutingRules.Tests.Reports.Lists.ListImportShow;

namespace RoutingRules.Tests.Reports.Lists;

public sealed class ListImportTests
{
    [Fact]
    public void A_list_has_a_column_for_each_member_and_says_lists_in_one_cell()
    {
        var rows = ListExport.Write(Before, IntentList.Feeds).Split("\r\n");

        Assert.Equal(
            "id,name,role,set,part,source,to,priority,preferred,hold,group,spread,separateFrom,backupOf,limiter,delayMilliseconds,override,"
                + "person,pack,position,notes",
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
            ListExport.Write(Before, IntentList.Lines).Split("\r\n")[1..]
        );
    }

    [Fact]
    public void A_changed_cell_changes_its_member_and_not_one_byte_besides()
    {
        var list = ListExport
            .Write(Before, IntentList.Feeds)
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
        Assert.Equal(Before with { Feeds = [Before.Feeds[1]] }, removed.Show);
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
            Before,
            "CHANNEL-NAME;48v;colour;Tray\nKeys;on;red;1\n"u8,
            IntentList.Lines,
            new ListImportOptions { Config = config, Ignore = ["tray"] }
        );
        var back = ListImport.Read(result.Show!, "channel name;48 V\nKeys;-"u8, IntentList.Lines, new ListImportOptions { Config = config });
        var written = ListExport.Write(result.Show!, IntentList.Lines, config);

        Assert.Equal(PhantomNeed.Required, result.Show!.Lines[0].Phantom);
        Assert.Equal(Before, back.Show);
        Assert.StartsWith("id;Channel name;kind;48 V;width;from;Desk;", written, StringComparison.Ordinal);
        Assert.Empty(ListImport.Read(result.Show, Encoding.UTF8.GetBytes(written), IntentList.Lines, new ListImportOptions { Config = config }).Edits);
        Assert.Throws<ArgumentException>(() =>
            Import(
                "id",
                new ListImportOptions { Config = new ListsConfig { Feeds = new ListConfig { Columns = [new() { Header = "A", Member = "nothing" }] } } }
            )
        );
        Assert.Throws<ArgumentException>(() => ListExport.Write(Before, IntentList.Feeds, new ListsConfig { Feeds = new ListConfig { Ignore = ["Pack"] } }));
    }

    [Fact]
    public void Content_of_other_tools_goes_only_with_its_entry_and_that_is_said()
    {
        var result = Import("id,to\nmain-l,box | zone stage-left");

        Assert.Contains("what other tools kept in an entry goes with it", Assert.Single(result.Notes).Message, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(Before.Feeds[0].Extensions, result.Show!.Feeds[0].Extensions);
        var moved = ListImport.Read(Before, "id,from\nkeys,box"u8, IntentList.Lines);
        Assert.Equal(Before.Lines[0].From.Extensions, moved.Show!.Lines[0].From.Extensions);
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
}
