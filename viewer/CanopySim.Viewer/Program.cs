Console.Error.WriteLine("canopysim-view: not there yet");
return 2;
