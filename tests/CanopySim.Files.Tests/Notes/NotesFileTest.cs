using CanopySim.Files.Notes;
using Xunit;

namespace CanopySim.Files.Tests.Notes;

public sealed class NotesFileTest
{
    private const string CasesFile = "Notes/bad-notes.txt";

    public static TheoryData<string> Names => [.. GoldenCases.Read(CasesFile).Select(found => found.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Says_where_what_and_what_is_expected(string name)
    {
        var (_, text, expected) = GoldenCases.Read(CasesFile).Single(found => found.Name == name);
        Assert.Equal(expected, Assert.Throws<InputError>(() => NotesText.Read(text)).Message);
    }

    [Fact]
    public void Columns_may_stand_in_any_order_and_cells_may_be_empty()
    {
        var notes = NotesText.Read(
            "Unit;Value;What;Date;Remark\ncm;45;length;12.5.2025;windy\n;8;Nodes\n\n;;;13.5.2025;hail in the evening\n;1;nodes;1.5.2025\n");
        Assert.Equal(
            ["2025-05-01 Nodes 1", "2025-05-12 ShootLength 0.45", "2025-05-12 Nodes 8"],
            notes.Notes.Select(note => FormattableString.Invariant($"{note.Date:yyyy-MM-dd} {note.Kind} {note.Value}")));
        Assert.Equal("windy", notes.Notes[1].Remark);
        Assert.Equal(["2025-05-13: hail in the evening"], notes.Remarks);
    }

    [Fact]
    public void A_sheet_may_have_a_column_for_each_thing()
    {
        var notes = NotesText.Read(
            "date,vine,shoot,shoot length [in],nodes,bloom (%)\n2025-05-12,7,1,10,6,\n,7,2,11.5,,\n,,,,,20\n");
        Assert.Equal(
            ["7/1 ShootLength 0.254", "7/1 Nodes 6", "7/2 ShootLength 0.2921", "/ Bloom 0.2"],
            notes.Notes.Select(note => FormattableString.Invariant($"{note.Vine}/{note.Shoot} {note.Kind} {note.Value:0.####}")));
        Assert.Equal((2, 4), (notes.Notes[0].Place.Line, notes.Notes[0].Place.Column));
    }

    [Theory]
    [InlineData("2025-05-04", 5, 4)]
    [InlineData("4.5.2025", 5, 4)]
    [InlineData("4 May 2025", 5, 4)]
    [InlineData("\"May 4, 2025\"", 5, 4)]
    [InlineData("4/4/2025", 4, 4)]
    public void Dates_are_read_as_people_write_them(string date, int month, int day) =>
        Assert.Equal(new DateOnly(2025, month, day), NotesText.Read($"date,what,value\n{date},nodes,8\n").Notes[0].Date);

    [Theory]
    [InlineData("5/12/2025", "5/13/2025", 5, 12)]
    [InlineData("5/12/2025", "13/5/2025", 12, 5)]
    public void One_date_over_twelve_tells_what_the_slashes_mean(string date, string other, int month, int day) =>
        Assert.Contains(
            new DateOnly(2025, month, day),
            NotesText.Read($"date,what,value\n{date},nodes,8\n{other},nodes,9\n").Notes.Select(note => note.Date));

    [Fact]
    public void Nameless_shoots_may_be_noted_again_and_again() =>
        Assert.Equal(2, NotesText.Read("date,what,value\n2025-05-12,nodes,8\n2025-05-12,nodes,9\n").Notes.Count);

    [Fact]
    public void The_empty_sheet_is_read_and_each_of_its_examples_too()
    {
        Assert.Empty(NotesText.Read(NotesSheet.Empty()).Notes);
        foreach (var word in NoteKinds.All)
            Assert.Equal(word.Kind, NotesText.One(word.Name, $"\"{word.Example.Value}\"", word.Example.Unit).Kind);
    }
}
