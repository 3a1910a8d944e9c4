choose () 
{ 
    w=$(xdotool search --onlyvisible --name "$2" | tail -1);
    xdotool windowfocus $w;
    sleep .4;
    ty "$1";
    sleep .8;
    k Return;
    sleep .6;
    k Return;
    sleep 1.5;
    foc
}
