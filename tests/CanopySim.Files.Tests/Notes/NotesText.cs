using System.Text;
using CanopySim.Files.Notes;

namespace CanopySim.Files.Tests.Notes;

/// <summary>Field notes from text.</summary>
internal static class NotesText
{
    public static FieldNotes Read(string text) => NotesFile.Read(Encoding.UTF8.GetBytes(text), "notes.csv");

    /// <summary>The only note of a line under the usual header.</summary>
    public static FieldNote One(string what, string value, string unit = "", string shoot = "3") =>
        Read($"date,vine,shoot,what,value,unit\n2025-05-12,7,{shoot},{what},{value},{unit}\n").Notes.Single();
}
